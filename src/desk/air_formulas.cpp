#include "base/text.h"
#include "care/leakage.h"
#include "care/vapour.h"
#include "desk/formula_lists.h"

namespace backmark::desk {

namespace {

Input air(const char* name = "T_C") {
  return {name, "C", care::vapour_low_c, care::vapour_high_c};
}

Input humidity(const char* name = "RH_pct") {
  return {name, "%", 0.1, 100};
}

Input which() {
  std::vector<std::string> names;
  for (const care::Magnus& one : care::magnus_sets()) {
    names.emplace_back(one.name);
  }
  return {"formula", "", 0, 0, false, true, join(names, "|")};
}

const care::Magnus& set_of(const Given& given) {
  const care::Magnus* named = care::magnus_set(given.text("formula"));
  return named != nullptr ? *named : care::magnus_sets().front();
}

Reckoned with_set(double value, const Given& given, std::string unit = "") {
  return {value, std::move(unit), std::string("by ") + std::string(set_of(given).source)};
}

Result<Reckoned> saturation(const Given& given) {
  const double hpa = care::saturation_hpa({given.number("T_C")}, set_of(given));
  const bool pascal = given.text("unit") == "Pa";
  return with_set(pascal ? hpa * 100 : hpa, given, pascal ? "Pa" : "");
}

Result<Reckoned> saturation_pa(const Given& given) {
  return with_set(care::saturation_hpa({given.number("T_C")}, set_of(given)) * 100, given);
}

Result<Reckoned> density(const Given& given) {
  return with_set(care::absolute_humidity({given.number("T_C")}, {100}, set_of(given)), given);
}

Result<Reckoned> dew(const Given& given) {
  return with_set(
      care::dew_point({given.number("T_C")}, {given.number("RH_pct")}, set_of(given)).value,
      given);
}

Result<Reckoned> grams(const Given& given) {
  return with_set(
      care::absolute_humidity({given.number("T_C")}, {given.number("RH_pct")}, set_of(given)),
      given);
}

Result<Reckoned> warmed(const Given& given) {
  const RelativeHumidity then = care::humidity_at(
      {given.number("T1_C")}, {given.number("RH1_pct")}, {given.number("T2_C")}, set_of(given));
  if (then.value > 100) {
    return Problem{
        Fault::refused,
        fmt::format("the air would hold {:.0f} %, so water settles on cold things", then.value),
        "", "keep the case above the dew point"};
  }
  return with_set(then.value, given);
}

Result<Reckoned> in_loan_band(const Given& given) {
  const double rh = given.number("RH_pct");
  const double t = given.number("T_C");
  const bool holds =
      rh >= 40 && rh <= 60 && t >= 16 && t <= 25 && given.number("RH_swing_24h_pct", 0) <= 10;
  return Reckoned{
      holds ? 1 : 0, "",
      holds ? "inside the band" : "outside the band: 40-60 %, 16-25 C, 10 % in 24 h"};
}

const char* const vapour_source =
    "Magnus form; coefficients of WMO-No. 8 (2008) unless another set is named";

}  // namespace

std::vector<Formula> air_formulas() {
  return {
      {.name = "vapour_pressure",
       .what = "saturation vapour pressure over water",
       .inputs = {air(), which(), {"unit", "", 0, 0, false, true, "hPa|Pa"}},
       .unit = "hPa",
       .source = vapour_source,
       .notes = "",
       .reckon = saturation},
      {.name = "vapour_pressure_pa",
       .what = "saturation vapour pressure over water (table)",
       .inputs = {air(), which()},
       .unit = "Pa",
       .source = vapour_source,
       .notes = "within 1 % of the handbook's table",
       .reckon = saturation_pa},
      {.name = "vapour_density",
       .what = "saturated vapour density (table)",
       .inputs = {air(), which()},
       .unit = "g/m3",
       .source = vapour_source,
       .notes = "ideal gas; within 1 % of the handbook's table",
       .reckon = density,
       .also = {"saturated vapour density"}},
      {.name = "dew_point",
       .what = "dew point",
       .inputs = {air(), humidity(), which()},
       .unit = "C",
       .source = vapour_source,
       .notes = "",
       .reckon = dew},
      {.name = "absolute_humidity",
       .what = "absolute humidity",
       .inputs = {air(), {"RH_pct", "%", 0, 100}, which()},
       .unit = "g/m3",
       .source = vapour_source,
       .notes = "ideal gas, 18.015 g/mol",
       .reckon = grams},
      {.name = "warmed_humidity",
       .what = "RH after warming a sealed parcel (vapour pressure held)",
       .inputs = {air("T1_C"), humidity("RH1_pct"), air("T2_C"), which()},
       .unit = "%",
       .source = vapour_source,
       .notes = "no water comes or goes",
       .reckon = warmed},
      {.name = "lifetime",
       .what = "lifetime multiplier",
       .inputs = {{"T_C", "C", -20, 60},
                  {"RH_pct", "%", 5, 95},
                  {"Ea_kJ_mol", "kJ/mol", 10, 200}},
       .unit = "",
       .source = "S. Michalski 2002; form from memory",
       .notes = "chemical decay of paper, film and dyes only; 1 at 20 C and 50 %",
       .value =
           [](const std::vector<double>& in) {
             return care::lifetime_multiplier({in[0]}, {in[1]}, in[2]);
           }},
      {.name = "loan_band",
       .what = "loan climate band test",
       .inputs = {{"RH_pct", "%", 0, 100},
                  {"T_C", "C", -50, 80},
                  {"RH_swing_24h_pct", "%", 0, 100, false, true}},
       .unit = "bool",
       .source = "Bizot Green Protocol, 2023",
       .notes = "1 inside, 0 outside",
       .reckon = in_loan_band},
      {.name = "gas_ppb",
       .what = "H2S concentration conversion",
       .inputs = {{"ug_m3", "ug/m3", 0, 1e9},
                  {"M_g_mol", "g/mol", 1, 1000},
                  {"T_C", "C", -50, 80},
                  {"p_kPa", "kPa", 10, 200}},
       .unit = "ppb",
       .source = "ideal gas",
       .notes = "",
       .value =
           [](const std::vector<double>& in) {
             return care::gas_ppb(in[0], in[1], {in[2]}, in[3]);
           },
       .also = {"gas concentration conversion"}},
  };
}

}  // namespace backmark::desk
