#include <limits>

#include "assay/alloy.h"
#include "desk/bench_formulas.h"

namespace backmark::desk {

namespace {

constexpr double dense = 25;  // g/cm3
const char* const mixing =
    "volumes add: 1 / rho = sum of mass share / density; silver 10.49, copper 8.96, gold 19.32";

double kept(const Result<double>& value) {
  return value ? *value : std::numeric_limits<double>::quiet_NaN();
}

Input density_of(const char* name) {
  return {name, "g/cm3", 1e-3, dense};
}

}  // namespace

std::vector<Formula> alloy_formulas() {
  return {
      {"silver_density",
       "density of silver and copper alone",
       {{"fineness", "permille", 0, 1000}},
       "g/cm3",
       mixing,
       "published sterling: 10.36",
       [](const std::vector<double>& in) { return kept(assay::silver_alloy_density(in[0])); }},
      {"silver_fineness",
       "fineness of an alloy of silver and copper alone from its density",
       {{"rho", "g/cm3", assay::copper_density, assay::silver_density}},
       "permille",
       mixing,
       "below 8.96 it is no such alloy: nickel silver, brass, hollow or set",
       [](const std::vector<double>& in) {
         return assay::silver_fineness(in[0], 0)->permille;
       }},
      {"silver_fineness_u",
       "standard uncertainty of that fineness",
       {{"rho", "g/cm3", assay::copper_density, assay::silver_density}, {"u", "g/cm3", 0, 10}},
       "permille",
       mixing,
       "sterling and coin silver differ by 0.0435 g/cm3",
       [](const std::vector<double>& in) { return assay::silver_fineness(in[0], in[1])->u; }},
      {"gold_density",
       "density of an alloy of gold, silver and copper",
       {{"gold", "share of mass", 0, 1}, {"silver", "share of mass", 0, 1}},
       "g/cm3",
       mixing,
       "the rest is copper; white gold with palladium is denser",
       [](const std::vector<double>& in) {
         return kept(assay::mixed_density({{in[0], assay::gold_density},
                                           {in[1], assay::silver_density},
                                           {1 - in[0] - in[1], assay::copper_density}}));
       }},
      {"karat_to_fineness",
       "karat as parts in a thousand",
       {{"karat", "", 0, 24}},
       "permille",
       "k / 24",
       "",
       [](const std::vector<double>& in) { return in[0] / 24 * 1000; }},
      {"fineness_to_karat",
       "parts in a thousand as karat",
       {{"fineness", "permille", 0, 1000}},
       "karat",
       "k / 24",
       "",
       [](const std::vector<double>& in) { return in[0] / 1000 * 24; }},
      {"least_gold",
       "least fineness that a United States karat mark allows since 1 October 1981, without "
       "solder",
       {{"karat", "", 0, 24}},
       "permille",
       "15 USC 295 (secondary): 3 parts in a thousand",
       "7 with solder; before that day half a karat, one karat with solder",
       [](const std::vector<double>& in) { return in[0] / 24 * 1000 - 3; }},
      {"metal_share",
       "share of mass of the denser of two parts, from the density of the whole",
       {density_of("whole"), density_of("lighter"), density_of("denser")},
       "",
       "volumes add",
       "the whole must lie between the two; voids lower it",
       [](const std::vector<double>& in) {
         return kept(assay::denser_share(in[0], in[1], in[2]));
       }},
      {"metal_mass",
       "mass of the denser part",
       {density_of("whole"),
        density_of("lighter"),
        density_of("denser"),
        {"mass", "g", 0, 1e6}},
       "g",
       "volumes add",
       "",
       [](const std::vector<double>& in) {
         return in[3] * kept(assay::denser_share(in[0], in[1], in[2]));
       }},
  };
}

}  // namespace backmark::desk
