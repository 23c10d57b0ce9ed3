// Formulas against worked values. Those of water, weighing and alloys are from the sources
// named in each row; "worked" means reckoned by hand from the formula's source.
#include "desk/formulas.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using desk::Formula;

namespace {

struct Case {
  const char* formula;
  std::vector<double> inputs;
  double expected;
  double tolerance;
  const char* source;
};

const Formula* find(std::string_view name) {
  for (const Formula& formula : desk::formulas()) {
    if (formula.name == name) {
      return &formula;
    }
  }
  return nullptr;
}

// Tanaka et al. 2001 tabulate to four decimals of kg/m3.
const std::vector<Case> cases{
    {"water_density", {0}, 999.8428, 0.0005, "Tanaka 2001"},
    {"water_density", {4}, 999.9749, 0.0005, "Tanaka 2001"},
    {"water_density", {10}, 999.7027, 0.0005, "Tanaka 2001"},
    {"water_density", {15}, 999.1026, 0.0005, "Tanaka 2001"},
    {"water_density", {20}, 998.2067, 0.0005, "Tanaka 2001"},
    {"water_density", {22.5}, 997.6582, 0.0005, "Tanaka 2001"},
    {"water_density", {25}, 997.0470, 0.0005, "Tanaka 2001"},
    {"water_density", {30}, 995.6488, 0.0005, "Tanaka 2001"},
    {"water_density", {40}, 992.2152, 0.0005, "Tanaka 2001"},
    {"older_water_density", {20}, 998.2031, 0.0005, "IP Standard Methods 1998, appendix G"},
    {"densest_water", {}, 3.983035, 0.001, "Tanaka 2001: the squared term is nothing there"},
    {"relative_density", {3, 2}, 3, 1e-9, "a block of 3 kg that displaces 1 kg of water"},
    {"relative_density", {12.480, 7.960}, 2.761061947, 0.0005, "worked"},
    {"density_no_air", {12.480, 7.960, 21}, 2.75552607, 0.0005, "worked"},
    {"density", {12.480, 7.960, 21, 0.0012}, 2.753412796, 0.0005, "worked"},
    {"density", {25.120, 22.700, 20, 0.0012}, 10.35029481, 0.001, "worked"},
    {"relative_density_u", {12.480, 7.960, 0.002}, 0.001449059464, 2e-5, "worked"},
    {"relative_density_u", {0.850, 0.541, 0.002}, 0.02110497185, 2e-4, "worked"},
    {"bubble_reading", {12.480, 4.520, 0.05, 0.998}, 2.736326044, 0.0005, "worked"},
    {"silver_density", {999}, 10.48820904, 0.0005, "volumes add"},
    {"silver_density", {958}, 10.41530275, 0.0005, "volumes add"},
    {"silver_density", {925}, 10.36, 0.005, "ESPI Metals data sheet, sterling"},
    {"silver_density", {900}, 10.31388127, 0.0005, "volumes add"},
    {"silver_density", {835}, 10.20254113, 0.0005, "volumes add"},
    {"silver_density", {800}, 10.14357867, 0.0005, "volumes add"},
    {"silver_fineness", {10.3574}, 925.0262292, 0.5, "volumes add, turned round"},
    {"silver_fineness", {10.3139}, 900.0108173, 0.5, "volumes add, turned round"},
    {"silver_fineness_u", {10.357, 0.02}, 11.45391907, 0.2, "its slope"},
    {"gold_density", {0.75, 0.125}, 15.45908555, 0.001, "volumes add"},
    {"gold_density", {0.75, 0.25}, 15.9, 0.1, "published 18 karat green gold"},
    {"gold_density", {10.0 / 24, 0}, 11.59, 0.06, "published 10 karat red gold"},
    {"karat_to_fineness", {24}, 1000, 0.01, "k / 24"},
    {"karat_to_fineness", {14}, 583.3333333, 0.01, "k / 24"},
    {"karat_to_fineness", {10}, 416.6666667, 0.01, "k / 24"},
    {"fineness_to_karat", {585}, 14.04, 0.01, "k / 24"},
    {"least_gold", {14}, 580.3333333, 0.01, "15 USC 295"},
    {"metal_share", {6.50, 2.65, 10.36}, 0.7958894543, 0.0005, "volumes add"},
    {"metal_mass", {6.50, 2.65, 10.36, 42}, 33.42735708, 0.02, "volumes add"},
    {"inches_mm", {1}, 25.4, 1e-12, "international yard and pound agreement 1959"},
    {"troy_ounces_g", {1}, 31.1034768, 1e-12, "480 grains"},
    {"grains_g", {480}, 31.1034768, 1e-9, "a troy ounce"},
    {"carats_g", {1}, 0.2, 1e-12, "the metric carat"},
    {"pennyweights_g", {20}, 31.1034768, 1e-9, "a troy ounce"},
    {"grams_ct", {7.25}, 36.25, 1e-9, "the metric carat"},
    {"ounces_g", {16}, 453.59237, 1e-9, "the pound of 1959"},
    {"pounds_ft3", {1}, 16.01846, 1e-4, "conversion tables give 16.01846"},
    {"critical_angle", {1.88, 1.61}, 58.91285779, 0.01, "sine law"},
    {"reflectance", {1.5}, 0.04, 1e-6, "Fresnel, straight on"},
    {"birefringence", {1.655, 1.909}, 0.254, 1e-9, "malachite, as published"},
    {"birefringence", {1.530, 1.685}, 0.155, 1e-9, "shell, as published"},
    {"elephant_angle_z", {100}, -2.607758621, 0.001, "Espinoza and Mann 1993"},
    {"mammoth_angle_z", {100}, 2.694672131, 0.001, "Espinoza and Mann 1993"},
    {"elephant_to_mammoth", {100}, 1.324264603, 0.005, "two normal curves"},
    {"elephant_to_mammoth", {120}, 73136.42362, 731, "two normal curves"},
    {"even_angle", {}, 99.49611401, 0.05, "two normal curves"},
};

}  // namespace

TEST_CASE("formulas of the bench give the worked values of their sources") {
  for (const Case& one : cases) {
    const Formula* formula = find(one.formula);
    REQUIRE_MESSAGE(formula != nullptr, one.formula);
    const double value = formula->value(one.inputs);
    CHECK_MESSAGE(
        std::abs(value - one.expected) <= one.tolerance,
        fmt::format("{}: {} and not {} ({})", one.formula, value, one.expected, one.source));
  }
}

TEST_CASE("every formula has its own name, a source, and limits that hold something") {
  std::vector<std::string> names;
  for (const Formula& formula : desk::formulas()) {
    CHECK(std::find(names.begin(), names.end(), formula.name) == names.end());
    names.push_back(formula.name);
    CHECK_MESSAGE(!formula.source.empty(), formula.name);
    for (const desk::Input& input : formula.inputs) {
      const bool is_word = !input.words.empty();
      CHECK_MESSAGE((is_word || input.low < input.high), formula.name);
    }
  }
}
