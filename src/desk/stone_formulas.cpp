#include <cmath>
#include <numbers>

#include "assay/ivory.h"
#include "desk/bench_formulas.h"
#include "exchange/unit.h"

namespace backmark::desk {

namespace {

constexpr double heavy = 1e9;
const char* const optics = "optics of a smooth face; from memory";
const char* const schreger =
    "E. O. Espinoza and M.-J. Mann, Journal of the American Institute for Conservation 32(3), "
    "1993";
const char* const exact = "exact by definition; from memory";

Input index(const char* name) {
  return {name, "", 1, 4};
}
Input angle() {
  return {"angle", "deg", 1e-9, 180};
}

constexpr double grain_g = 0.06479891;
constexpr double pound_kg = 0.45359237;
constexpr double foot_m = 0.3048;

double factor(std::string_view unit) {
  return exchange::find_unit(unit)->factor;
}

Formula unit(const char* name,
             const char* what,
             const char* from,
             const char* to,
             double (*value)(const std::vector<double>&)) {
  return {name, what, {{"x", from, 0, heavy}}, to, exact, "", value};
}

std::vector<Formula> unit_formulas() {
  using In = const std::vector<double>&;
  return {
      unit("inches_mm", "inches as millimetres", "in", "mm",
           [](In in) { return in[0] * factor("in"); }),
      unit("troy_ounces_g", "troy ounces as grams", "ozt", "g",
           [](In in) { return in[0] * factor("ozt"); }),
      unit("ounces_g", "ounces (avoirdupois) as grams", "oz", "g",
           [](In in) { return in[0] * factor("oz"); }),
      unit("pennyweights_g", "pennyweights as grams", "dwt", "g",
           [](In in) { return in[0] * factor("dwt"); }),
      unit("grains_g", "grains as grams", "grain", "g", [](In in) { return in[0] * grain_g; }),
      unit("carats_g", "metric carats as grams", "ct", "g",
           [](In in) { return in[0] * factor("ct"); }),
      unit("grams_ct", "grams as metric carats", "g", "ct",
           [](In in) { return in[0] / factor("ct"); }),
      unit("pounds_ft3", "pounds in a cubic foot as kilograms in a cubic metre", "lb/ft3",
           "kg/m3", [](In in) { return in[0] * pound_kg / (foot_m * foot_m * foot_m); }),
  };
}

}  // namespace

std::vector<Formula> stone_formulas() {
  std::vector<Formula> list = {
      {"critical_angle",
       "angle of total reflection of a refractometer's glass against a stone",
       {index("glass"), index("stone")},
       "deg",
       optics,
       "the stone's index must be the lower",
       [](const std::vector<double>& in) {
         return std::asin(in[1] / in[0]) * 180 / std::numbers::pi;
       }},
      {"reflectance",
       "share of light that comes back from a face seen straight on, in air",
       {index("n")},
       "",
       optics,
       "",
       [](const std::vector<double>& in) {
         const double r = (in[0] - 1) / (in[0] + 1);
         return r * r;
       }},
      {"birefringence",
       "upper less lower index",
       {index("low"), index("high")},
       "",
       optics,
       "",
       [](const std::vector<double>& in) { return in[1] - in[0]; }},
      {"elephant_angle_z",
       "how many standard deviations an angle of outer crossing lines is from the mean of "
       "elephant",
       {angle()},
       "",
       schreger,
       "outer lines near the cement; a trained examiner decides",
       [](const std::vector<double>& in) {
         return assay::angle_score(assay::elephant_angles, in[0]);
       }},
      {"mammoth_angle_z",
       "the same from the mean of mammoth",
       {angle()},
       "",
       schreger,
       "",
       [](const std::vector<double>& in) {
         return assay::angle_score(assay::mammoth_angles, in[0]);
       }},
      {"elephant_to_mammoth",
       "how much likelier a mean angle is for elephant than for mammoth",
       {angle()},
       "",
       schreger,
       "the mean of at least five concave and five convex angles",
       [](const std::vector<double>& in) { return assay::elephant_to_mammoth(in[0]); }},
      {"even_angle",
       "mean angle at which both are as likely",
       {},
       "deg",
       schreger,
       "",
       [](const std::vector<double>&) { return assay::even_angle(); }},
  };
  for (Formula& one : unit_formulas()) {
    list.push_back(std::move(one));
  }
  return list;
}

}  // namespace backmark::desk
