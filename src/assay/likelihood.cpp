#include "assay/likelihood.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "assay/ivory.h"
#include "base/text.h"

namespace backmark::assay {

namespace {

using reference::Material;

constexpr double table_density_u = 0.01;  // g/cm3: what two good tables differ by
constexpr double table_edge = 0.02;       // g/cm3 beyond its ends that a table may be wrong by

double normal(double x, double mean, double sd) {
  const double z = (x - mean) / sd;
  return std::exp(-0.5 * z * z) / (sd * std::sqrt(2 * std::numbers::pi));
}

double below(double z) {
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

bool has(const std::vector<std::string>& list, const std::string& word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

Fit fit_density(const Material& material, const Density& density) {
  const double reach = 3 * density.u + table_edge;
  Fit fit{density_likelihood(material, density), ""};
  if (density.g_cm3 < material.density_low - reach ||
      density.g_cm3 > material.density_high + reach) {
    fit.excluded = fmt::format("density {:.3f} is outside {:g} to {:g}", density.g_cm3,
                               material.density_low, material.density_high);
  }
  return fit;
}

Fit opaque() {
  return {0, "it is opaque: no refractive index is read on it"};
}

// A spot may fall anywhere between the ends of the range.
Fit fit_index(const Material& material, const Bench& bench) {
  if (!material.index_low) {
    return opaque();
  }
  const double low = *material.index_low;
  const double high = *material.index_high;
  if (bench.index_over) {
    Fit fit{std::clamp((high - spot_most) / std::max(high - low, 0.02), 0.0, 1.0), ""};
    if (high < spot_most) {
      fit.excluded =
          fmt::format("its index ends at {:g}, below the refractometer's limit", high);
    }
    return fit;
  }
  const double x = *bench.spot_index;
  const double width = std::max(high - low, spot_u);
  const double middle = 0.5 * (low + high);
  Fit fit{
      (below((middle + width / 2 - x) / spot_u) - below((middle - width / 2 - x) / spot_u)) /
          width,
      ""};
  if (x + spot_u < low || x - spot_u > high) {
    fit.excluded = fmt::format("spot index {:.2f} is outside {:g} to {:g}", x, low, high);
  }
  return fit;
}

Fit fit_blink(const Material& material, std::pair<double, double> edges) {
  if (!material.index_low) {
    return opaque();
  }
  const double u = 2 * spot_u;
  const double upper = std::min(*material.index_high, spot_most);
  Fit fit{normal(edges.first, *material.index_low, u) * normal(edges.second, upper, u), ""};
  if (material.birefringence < 0.05) {
    fit.excluded = "it shows no blink between two indices";
  }
  return fit;
}

Fit fit_word(const std::vector<std::string>& usual, const std::string& word, double odd) {
  const auto kinds = static_cast<double>(usual.size());
  return {has(usual, word) ? (1 - odd) / kinds : odd / std::max(1.0, 3 - kinds), ""};
}

Fit fit_magnet(const Material& material, const std::string& word) {
  Fit fit = fit_word(material.magnet, word, 0.03);
  if (word == "yes" && !has(material.magnet, "yes")) {
    fit.excluded = "a magnet does not hold it; look for a steel pin or core";
  }
  return fit;
}

// What is listed is seen six times in ten; what is not listed, once in a hundred.
Fit fit_seen(const Material& material, const std::vector<std::string>& seen) {
  Fit fit;
  for (const std::string& one : seen) {
    fit.likelihood *= has(material.seen, one) ? 0.6 : 0.01;
  }
  return fit;
}

// Few angles leave both species open where their single angles overlap.
Fit fit_angle(const Material& material, double degrees, int angles) {
  if (material.name == "hippopotamus ivory") {
    return {1e-4, ""};  // one carved tooth is known to have shown the like
  }
  const bool elephant = material.name == "elephant ivory";
  if (!elephant && material.name != "mammoth ivory") {
    return {1e-4, "no crossing lines are known in it"};
  }
  const AngleModel& model = elephant ? elephant_angles : mammoth_angles;
  const double sd = angles >= enough_angles ? model.sd : 3 * model.sd;
  return {normal(degrees, model.mean, sd), ""};
}

// A mark is a claim, not an assay.
Fit fit_fineness(const Material& material, const std::string& mark) {
  for (const reference::FinenessMark& known : reference::fineness_marks()) {
    if (known.mark != lower_ascii(mark)) {
      continue;
    }
    if (known.permille == 0) {
      return {material.name == known.metal ? 0.8 : 0.02, ""};
    }
    if (material.name.rfind(known.metal, 0) != 0) {
      return {0.02, ""};
    }
    const auto number = to_number(split(material.name, " ")[1]);
    const double permille =
        known.metal == "gold" && number ? *number / 24 * 1000 : number.value_or(0);
    return {std::abs(permille - known.permille) <= 18 ? 0.8 : 0.15, ""};
  }
  return {};
}

}  // namespace

double density_likelihood(const Material& material, const Density& density) {
  const double lower = std::max(0.003, (material.density_usual - material.density_low) / 2);
  const double upper = std::max(0.003, (material.density_high - material.density_usual) / 2);
  const bool under = density.g_cm3 < material.density_usual;
  const double own = std::hypot(under ? lower : upper, density.u, table_density_u);
  const double z = (density.g_cm3 - material.density_usual) / own;
  return 2 * std::exp(-0.5 * z * z) /
         ((std::hypot(lower, density.u, table_density_u) +
           std::hypot(upper, density.u, table_density_u)) *
          std::sqrt(2 * std::numbers::pi));
}

double cap(Test test) {
  switch (test) {
    case Test::density:
    case Test::index:
    case Test::blink:
    case Test::seen:
    case Test::angle:
      return 200;
    default:
      return 20;
  }
}

std::vector<Test> tests_of(const Bench& bench) {
  std::vector<Test> tests;
  const auto add = [&tests](bool made, Test test) {
    if (made) {
      tests.push_back(test);
    }
  };
  add(bench.density.has_value(), Test::density);
  add(bench.spot_index.has_value() || bench.index_over, Test::index);
  add(bench.index_blink.has_value(), Test::blink);
  add(!bench.uv_long.empty(), Test::uv_long);
  add(!bench.uv_short.empty(), Test::uv_short);
  add(!bench.magnet.empty(), Test::magnet);
  add(!bench.seen.empty(), Test::seen);
  add(bench.angle.has_value(), Test::angle);
  add(!bench.fineness_mark.empty(), Test::fineness);
  return tests;
}

Fit fit(const Material& material, const Bench& bench, Test test) {
  switch (test) {
    case Test::density:
      return fit_density(material, *bench.density);
    case Test::index:
      return fit_index(material, bench);
    case Test::blink:
      return fit_blink(material, *bench.index_blink);
    case Test::uv_long:
      return fit_word(material.uv_long, bench.uv_long, 0.1);
    case Test::uv_short:
      return fit_word(material.uv_short, bench.uv_short, 0.1);
    case Test::magnet:
      return fit_magnet(material, bench.magnet);
    case Test::seen:
      return fit_seen(material, bench.seen);
    case Test::angle:
      return fit_angle(material, *bench.angle, bench.angles);
    case Test::fineness:
      return fit_fineness(material, bench.fineness_mark);
  }
  return {};
}

}  // namespace backmark::assay
