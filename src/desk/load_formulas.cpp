#include <cmath>

#include "base/text.h"
#include "care/beam.h"
#include "desk/formula_lists.h"

namespace backmark::desk {

namespace {

const char* const beam_source = "elementary theory of the elastic beam (Euler and Bernoulli)";
const char* const beam_note =
    "a feel for sag only: case maker and local code decide; glass fails without warning";

Input optional(const char* name, const char* unit, double low, double high) {
  return {name, unit, low, high, false, true};
}

std::vector<Input> beam_inputs(std::vector<Input> first, bool stiff = true) {
  first.push_back({"L_m", "m", 1e-3, 50});
  first.push_back(optional("b_m", "m", 1e-4, 10));
  first.push_back(optional("t_mm", "mm", 0.1, 1000));
  first.push_back(optional("density_kg_m3", "kg/m3", 0, 25000));
  if (stiff) {
    first.push_back({"E_GPa", "GPa", 0.001, 1000});
    first.push_back(optional("I_m4", "m4", 1e-16, 1));
    first.push_back(optional("creep", "", 1, 10));
  }
  return first;
}

Problem no_section() {
  return missing_input("the section is missing", "write I_m4=..., or b_m=... and t_mm=...");
}

Result<care::Beam> beam_of(const Given& given) {
  care::Beam beam{given.number("L_m"), given.number("E_GPa") * 1e9, given.number("I_m4", 0)};
  if (!given.has("I_m4")) {
    if (!given.has("b_m") || !given.has("t_mm")) {
      return no_section();
    }
    beam.second_moment_m4 =
        care::second_moment(given.number("b_m"), given.number("t_mm") / 1000);
  }
  return beam;
}

// N/m: as given or as a mass spread over the span, and the shelf's own weight if its density is
// said.
double even_load(const Given& given) {
  double load = given.number("w_N_per_m", 0);
  load += given.number("mass_kg", 0) * care::gravity / given.number("L_m");
  load += given.number("density_kg_m3", 0) * given.number("b_m", 0) * given.number("t_mm", 0) /
          1000 * care::gravity;
  return load;
}

std::vector<Input> loads() {
  return {optional("w_N_per_m", "N/m", 0, 1e7), optional("P_N", "N", 0, 1e7),
          optional("mass_kg", "kg", 0, 1e6)};
}

bool is_loaded(const Given& given) {
  return given.has("w_N_per_m") || given.has("P_N") || given.has("mass_kg") ||
         given.has("density_kg_m3");
}

Problem no_load() {
  return missing_input("the load is missing", "write w_N_per_m=..., P_N=... or mass_kg=...");
}

Result<Reckoned> sag(const Given& given) {
  const auto beam = beam_of(given);
  if (!beam || !is_loaded(given)) {
    return beam ? no_load() : beam.problem();
  }
  const double metres =
      care::sag_even(*beam, even_load(given)) + care::sag_middle(*beam, given.number("P_N", 0));
  return Reckoned{metres * 1000 * given.number("creep", 1)};
}

Result<Reckoned> bracket(const Given& given) {
  const auto beam = beam_of(given);
  if (!beam || !is_loaded(given)) {
    return beam ? no_load() : beam.problem();
  }
  const double metres = care::sag_bracket_even(*beam, even_load(given)) +
                        care::sag_bracket_end(*beam, given.number("P_N", 0));
  return Reckoned{metres * 1000 * given.number("creep", 1)};
}

double moment_of(const Given& given) {
  const double length = given.number("L_m");
  const double even = even_load(given);
  const double point = given.number("P_N", 0);
  return given.text("held") == "one end"
             ? care::moment_bracket_even(even, length) + care::moment_bracket_end(point, length)
             : care::moment_even(even, length) + care::moment_middle(point, length);
}

Result<Reckoned> moment(const Given& given) {
  if (!is_loaded(given)) {
    return no_load();
  }
  return Reckoned{moment_of(given)};
}

Result<Reckoned> stress(const Given& given) {
  if (!is_loaded(given)) {
    return no_load();
  }
  if (!given.has("b_m") || !given.has("t_mm")) {
    return missing_input("the section is missing", "write b_m=... and t_mm=...");
  }
  return Reckoned{
      care::bending_stress(moment_of(given), given.number("b_m"), given.number("t_mm") / 1000) /
      1e6};
}

std::vector<Input> moment_inputs() {
  auto inputs = beam_inputs(loads(), false);
  inputs.push_back({"held", "", 0, 0, false, true, "both ends|one end"});
  return inputs;
}

}  // namespace

std::vector<Formula> load_formulas() {
  return {
      {.name = "sag",
       .what = "mid-span deflection, simply supported, full uniform load",
       .inputs = beam_inputs(loads()),
       .unit = "mm",
       .source = beam_source,
       .notes = beam_note,
       .reckon = sag,
       .also = {"mid-span deflection, glass shelf", "mid-span deflection, acrylic shelf",
                "mid-span deflection, MDF shelf (short-term)",
                "mid-span deflection, central point load", "mid-span deflection"}},
      {.name = "bracket_sag",
       .what = "deflection at the free end of a shelf held at one end",
       .inputs = beam_inputs(loads()),
       .unit = "mm",
       .source = beam_source,
       .notes = beam_note,
       .reckon = bracket,
       .also = {"cantilever end deflection"}},
      {.name = "moment",
       .what = "maximum bending moment",
       .inputs = moment_inputs(),
       .unit = "N m",
       .source = beam_source,
       .notes = beam_note,
       .reckon = moment},
      {.name = "stress",
       .what = "maximum bending stress",
       .inputs = moment_inputs(),
       .unit = "MPa",
       .source = beam_source,
       .notes = beam_note,
       .reckon = stress},
      {.name = "thickness_ratio",
       .what = "deflection ratio when thickness doubles",
       .inputs = {{"t_ratio", "", 0.01, 100}},
       .unit = "",
       .source = beam_source,
       .notes = "sag goes with 1 / thickness cubed",
       .value = [](const std::vector<double>& in) { return 1 / (in[0] * in[0] * in[0]); },
       .also = {"deflection ratio when thickness changes"}},
      {.name = "span_ratio",
       .what = "span/deflection ratio",
       .inputs = {{"L_mm", "mm", 0, 1e6}, {"deflection_mm", "mm", 1e-6, 1e5}},
       .unit = "",
       .source = "definition",
       .notes = "200 to 360 is asked of shelves: common practice",
       .value = [](const std::vector<double>& in) { return in[0] / in[1]; }},
  };
}

}  // namespace backmark::desk
