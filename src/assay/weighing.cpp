#include "assay/weighing.h"

#include <cmath>

#include "base/text.h"

namespace backmark::assay {

namespace {

Result<Done> within(Celsius temperature) {
  const double t = temperature.value;
  if (!(t >= coldest_water && t <= warmest_water)) {
    return Problem{Fault::refused,
                   fmt::format("water at {:g} degrees C is outside 0 to 40 degrees C", t), "",
                   "weigh in water of room temperature and give its temperature"};
  }
  return Done{};
}

}  // namespace

Result<double> water_density(Celsius temperature) {
  if (auto fine = within(temperature); !fine) {
    return fine.problem();
  }
  const double t = temperature.value;
  const double from_densest = t - 3.983035;
  return 999.974950 *
         (1 - from_densest * from_densest * (t + 301.797) / (522528.9 * (t + 69.34881)));
}

Result<double> older_water_density(Celsius temperature) {
  if (auto fine = within(temperature); !fine) {
    return fine.problem();
  }
  const double t = temperature.value;
  return (999.83952 + t * (16.952577 + t * (-7.9905127e-3 +
                                            t * (-46.241757e-6 +
                                                 t * (105.84601e-9 - t * 281.03006e-12))))) /
         (1 + 16.887236e-3 * t);
}

Celsius densest_water() {
  return Celsius{3.983035};  // where the squared term of the formula is nothing
}

Density relative_density(Grams in_air, Grams in_water, Grams reading_u) {
  const double d = in_air.value - in_water.value;
  const double u = reading_u.value;
  return {in_air.value / d,
          std::hypot(in_water.value / (d * d) * u, in_air.value / (d * d) * u)};
}

Result<Density> density_of(const Weighing& weighing) {
  const double air = weighing.in_air.value;
  const double water = weighing.in_water.value;
  if (!(air > 0) || !(weighing.reading_u.value >= 0)) {
    return Problem{Fault::refused, "a weight in air must be more than nothing", "",
                   "give the reading of the balance in grams"};
  }
  if (water < 0 || water >= air) {
    return Problem{Fault::refused,
                   fmt::format("{:g} g in water beside {:g} g in air is no weighing of a thing "
                               "that sinks",
                               water, air),
                   "", "look whether the two readings were changed round, or the thing floats"};
  }
  const auto rho_water = water_density(weighing.water);
  if (!rho_water) {
    return rho_water.problem();
  }
  const double rho_w = *rho_water / 1000;
  const Density ratio =
      relative_density(weighing.in_air, weighing.in_water, weighing.reading_u);
  return Density{ratio.g_cm3 * (rho_w - weighing.air_density) + weighing.air_density,
                 ratio.u * (rho_w - weighing.air_density)};
}

}  // namespace backmark::assay
