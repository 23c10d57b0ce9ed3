#include <cmath>

#include "base/text.h"
#include "care/light_dose.h"
#include "care/photometry.h"
#include "desk/formula_lists.h"

namespace backmark::desk {

namespace {

const char* const cosine_law =
    "E = I cos(theta) / d^2: inverse-square and cosine law, IES Lighting Definitions";
const char* const point_note =
    "for a source small beside its distance (five times its largest measure)";

// Candela as given, or of an even source by its lumens.
Result<double> intensity_of(const Given& given) {
  if (given.has("I_cd")) {
    return given.number("I_cd");
  }
  if (given.has("flux_lm")) {
    return care::intensity_of_even_source(given.number("flux_lm"));
  }
  return missing_input(
      "the intensity is missing",
      "write I_cd=..., or flux_lm=... for a source that shines alike all round");
}

// How far from the foot of the lamp the point lies, in the ways exercises and plans say it.
double offset_of(const Given& given) {
  if (given.has("offset_m")) {
    return given.number("offset_m");
  }
  const std::string point = given.text("point");
  const double side = given.number("table_side_m", 0);
  if (point == "corner") {
    return side / std::sqrt(2.0);
  }
  if (point == "edge") {
    return side / 2;
  }
  return given.number("square_side_m", 0) / std::sqrt(2.0);
}

// "4 at corners" or "4": the number it begins with; 1 if not given.
Result<double> lamps_of(const Given& given) {
  if (!given.has("lamps")) {
    return 1.0;
  }
  const auto count = to_whole(split(given.text("lamps"), " ").front());
  if (!count || *count < 1) {
    return Problem{Fault::bad_input,
                   fmt::format("\"{}\" is no number of lamps", given.text("lamps")), "",
                   "write lamps=4"};
  }
  return static_cast<double>(*count);
}

Result<Reckoned> level(const Given& given) {
  const auto intensity = intensity_of(given);
  const auto lamps = lamps_of(given);
  if (!intensity || !lamps) {
    return intensity ? lamps.problem() : intensity.problem();
  }
  if (given.has("d_m")) {
    return Reckoned{
        *lamps *
        care::illuminance(*intensity, given.number("d_m"), given.number("theta_deg", 0)).value};
  }
  if (given.has("height_m")) {
    return Reckoned{
        *lamps *
        care::illuminance_below(*intensity, given.number("height_m"), offset_of(given)).value};
  }
  return missing_input("the distance is missing",
                       "write d_m=... with theta_deg=..., or height_m=... with offset_m=...");
}

// Lux, from lux or from lumens a square foot.
Result<double> lux_of(const Given& given) {
  if (given.has("E_lx")) {
    return given.number("E_lx");
  }
  if (given.has("E_lm_per_ft2")) {
    return given.number("E_lm_per_ft2") * care::lux_of_footcandle;
  }
  return missing_input("the level is missing", "write E_lx=... or E_lm_per_ft2=...");
}

Result<Reckoned> intensity(const Given& given) {
  const auto lux = lux_of(given);
  if (!lux) {
    return lux.problem();
  }
  if (!given.has("d_m") && !given.has("height_m")) {
    return missing_input("the distance is missing", "write height_m=... or d_m=...");
  }
  if (given.has("d_m")) {
    return Reckoned{
        care::intensity_for({*lux}, given.number("d_m"), given.number("theta_deg", 0))};
  }
  const double per_candela =
      care::illuminance_below(1, given.number("height_m"), given.number("offset_m", 0)).value;
  return Reckoned{*lux / per_candela};
}

Result<Reckoned> distance(const Given& given) {
  const auto lux = lux_of(given);
  const auto candela = intensity_of(given);
  if (!lux || !candela) {
    return lux ? candela.problem() : lux.problem();
  }
  const double metres = care::distance_for(*candela, {*lux}, given.number("theta_deg", 0));
  if (given.has("E_lm_per_ft2")) {
    return Reckoned{metres / 0.3048, "ft", ""};
  }
  return Reckoned{metres};
}

Input optional(const char* name, const char* unit, double low, double high) {
  return {name, unit, low, high, false, true};
}

}  // namespace

std::vector<Formula> lamp_formulas() {
  const Input candela = optional("I_cd", "cd", 0, 1e9);
  const Input flux = optional("flux_lm", "lm", 0, 1e9);
  const Input angle = optional("theta_deg", "degree", 0, 90);
  const Input steep = optional("theta_deg", "degree", 0, 89.9);
  return {
      {.name = "illuminance",
       .what = "illuminance",
       .inputs = {candela,
                  flux,
                  optional("isotropic", "", 0, 1),
                  optional("d_m", "m", 0.01, 1e4),
                  angle,
                  optional("height_m", "m", 0.01, 1e4),
                  optional("offset_m", "m", 0, 1e4),
                  optional("table_side_m", "m", 0, 1e4),
                  {"point", "", 0, 0, false, true, "corner|edge|centre"},
                  optional("square_side_m", "m", 0, 1e4),
                  {"lamps", "", 0, 0, false, true, "*"}},
       .unit = "lx",
       .source = cosine_law,
       .notes = point_note,
       .reckon = level,
       .also = {"illuminance below lamp", "illuminance at table corner",
                "illuminance on inclined element", "illuminance off axis",
                "illuminance at centre, four lamps"}},
      {.name = "panel_illuminance",
       .what = "illuminance off axis, small Lambertian panel",
       .inputs = {{"E_axis_lx", "lx", 0, 1e9},
                  {"height_m", "m", 0.01, 1e4},
                  {"offset_m", "m", 0, 1e4}},
       .unit = "lx",
       .source = "E = E0 cos^4(theta): cosine law for a diffuse source that faces down",
       .notes = point_note,
       .value =
           [](const std::vector<double>& in) {
             return care::illuminance_of_panel({in[0]}, in[1], in[2]).value;
           }},
      {.name = "intensity",
       .what = "source intensity from illuminance below",
       .inputs = {optional("E_lx", "lx", 0, 1e9), optional("E_lm_per_ft2", "lm/ft2", 0, 1e8),
                  optional("d_m", "m", 0, 1e4), steep, optional("height_m", "m", 0.001, 1e4),
                  optional("offset_m", "m", 0, 1e4)},
       .unit = "cd",
       .source = cosine_law,
       .notes = point_note,
       .reckon = intensity},
      {.name = "lamp_distance",
       .what = "distance for required illuminance",
       .inputs = {candela, flux, steep, optional("E_lx", "lx", 1e-6, 1e9),
                  optional("E_lm_per_ft2", "lm/ft2", 1e-6, 1e8)},
       .unit = "m",
       .source = cosine_law,
       .notes = point_note,
       .reckon = distance},
      {.name = "point_distance",
       .what = "shortest distance for point-source formula",
       .inputs = {{"source_max_dimension_m", "m", 0, 1000}, {"rule_multiple", "", 1, 100}},
       .unit = "m",
       .source = "rule of lighting practice: five times the largest measure of the source",
       .notes = "strip lights inside a case normally break it",
       .value = [](const std::vector<double>& in) { return in[0] * in[1]; }},
  };
}

}  // namespace backmark::desk
