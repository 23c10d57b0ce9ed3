#include <limits>

#include "assay/weighing.h"
#include "desk/bench_formulas.h"

namespace backmark::desk {

namespace {

constexpr double heaviest = 1e6;
const char* const tanaka = "Tanaka et al., Metrologia 38 (2001) 301-309, equation 1";
const char* const buoyancy = "the balance makers' formula for density by two weighings";

Input weight(const char* name) {
  return {name, "g", 0, heaviest};
}
Input warmth() {
  return {"t", "degC", assay::coldest_water, assay::warmest_water};
}

// Inputs within the limits above always have an answer.
double kept(const Result<double>& value) {
  return value ? *value : 0;
}

double density(const std::vector<double>& in, double air) {
  const auto value =
      assay::density_of({Grams{in[0]}, Grams{in[1]}, Celsius{in[2]}, Grams{0}, air});
  return value ? value->g_cm3 : std::numeric_limits<double>::quiet_NaN();
}

}  // namespace

std::vector<Formula> weighing_formulas() {
  return {
      {"water_density",
       "density of air-free water at 101.325 kPa",
       {warmth()},
       "kg/m3",
       tanaka,
       "",
       [](const std::vector<double>& in) {
         return kept(assay::water_density(Celsius{in[0]}));
       }},
      {"older_water_density",
       "density of water by the older equation of Bettin and Spieweck",
       {warmth()},
       "kg/m3",
       "IP Standard Methods 1998, appendix G (secondary)",
       "runs 0.003 to 0.004 below the formula of 2001",
       [](const std::vector<double>& in) {
         return kept(assay::older_water_density(Celsius{in[0]}));
       }},
      {"densest_water",
       "temperature at which water is densest",
       {},
       "degC",
       tanaka,
       "",
       [](const std::vector<double>&) { return assay::densest_water().value; }},
      {"relative_density",
       "weight in air over loss of weight in water",
       {weight("Wa"), weight("Ww")},
       "",
       "Archimedes' principle",
       "referred to water of the bath's temperature, air left out",
       [](const std::vector<double>& in) {
         return assay::relative_density(Grams{in[0]}, Grams{in[1]}, Grams{0}).g_cm3;
       }},
      {"relative_density_u",
       "standard uncertainty of that, each reading with the same",
       {weight("Wa"), weight("Ww"), weight("u")},
       "",
       "first-order propagation of independent readings",
       "",
       [](const std::vector<double>& in) {
         return assay::relative_density(Grams{in[0]}, Grams{in[1]}, Grams{in[2]}).u;
       }},
      {"density_no_air",
       "density by two weighings, water at its temperature, air left out",
       {weight("Wa"), weight("Ww"), warmth()},
       "g/cm3",
       buoyancy,
       "",
       [](const std::vector<double>& in) { return density(in, 0); }},
      {"density",
       "density by two weighings, corrected for water and air",
       {weight("Wa"), weight("Ww"), warmth(), {"rho_a", "g/cm3", 0, 0.01}},
       "g/cm3",
       buoyancy,
       "0.0012 g/cm3 of air is usual; loose, solid, bare things only",
       [](const std::vector<double>& in) { return density(in, in[3]); }},
      {"bubble_reading",
       "relative density that is read when a bubble clings",
       {weight("Wa"),
        {"volume", "cm3", 1e-6, heaviest},
        {"bubble", "cm3", 0, heaviest},
        {"rho_w", "g/cm3", 0.9, 1.1}},
       "",
       "the bubble displaces water as the thing does",
       "always too low",
       [](const std::vector<double>& in) { return in[0] / (in[3] * (in[1] + in[2])); }},
  };
}

}  // namespace backmark::desk
