#include "assay/alloy.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"

namespace backmark::assay {

Result<double> mixed_density(const std::vector<std::pair<double, double>>& parts) {
  double shares = 0;
  double volume = 0;
  for (const auto& [share, density] : parts) {
    if (!(share >= 0 && share <= 1) || !(density > 0)) {
      return Problem{Fault::refused, "a share of mass lies between 0 and 1, a density above 0",
                     "", "mend the shares"};
    }
    shares += share;
    volume += share / density;
  }
  if (std::abs(shares - 1) > 1e-6) {
    return Problem{Fault::refused, fmt::format("the shares make {:g} and not 1", shares), "",
                   "give the share of every part"};
  }
  return 1 / volume;
}

Result<double> silver_alloy_density(double permille) {
  return mixed_density(
      {{permille / 1000, silver_density}, {1 - permille / 1000, copper_density}});
}

Result<Fineness> silver_fineness(double g_cm3, double u) {
  if (!(g_cm3 >= copper_density && g_cm3 <= silver_density)) {
    return Problem{
        Fault::refused,
        fmt::format(
            "{:g} g/cm3 is no alloy of silver and copper, which lie between {:g} and {:g}",
            g_cm3, copper_density, silver_density),
        "",
        g_cm3 < copper_density ? "think of nickel silver, brass, a hollow or a set piece"
                               : "think of gold, lead solder, or a faulty reading"};
  }
  const double per_volume = 1 / copper_density - 1 / silver_density;
  return Fineness{1000 * (1 / copper_density - 1 / g_cm3) / per_volume,
                  1000 * u / (g_cm3 * g_cm3) / per_volume};
}

Result<double> denser_share(double whole, double lighter, double denser) {
  if (!(lighter > 0 && lighter < denser)) {
    return Problem{Fault::refused, "the lighter part must be lighter than the denser one", "",
                   "turn the two round"};
  }
  if (!(whole >= lighter && whole <= denser)) {
    return Problem{Fault::refused,
                   fmt::format("a whole of {:g} g/cm3 cannot be made of parts of {:g} to {:g}",
                               whole, lighter, denser),
                   "",
                   whole > denser
                       ? "a claim about the parts or the reading is wrong: nothing raises it"
                       : "think of voids, fill or pitch inside, or mend the reading"};
  }
  return (1 / whole - 1 / lighter) / (1 / denser - 1 / lighter);
}

Result<std::pair<double, double>> denser_share_between(double whole,
                                                       std::pair<double, double> lighter,
                                                       double denser) {
  const auto a = denser_share(whole, lighter.first, denser);
  const auto b = denser_share(whole, lighter.second, denser);
  if (!a || !b) {
    return a ? b.problem() : a.problem();
  }
  return std::pair{std::min(*a, *b), std::max(*a, *b)};
}

}  // namespace backmark::assay
