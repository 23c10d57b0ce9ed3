#include <cmath>

#include "base/text.h"
#include "care/leakage.h"
#include "care/vapour.h"
#include "desk/formula_lists.h"

namespace backmark::desk {

namespace {

Input changes() {
  return {"N_per_day", "1/d", 1e-4, 1000};
}

Input optional(const char* name, const char* unit, double low, double high) {
  return {name, unit, low, high, false, true};
}

const char* const reservoir_note =
    "the moisture reservoir is the supplier's figure at the set point; it is never assumed";

Result<double> days_of(const Given& given) {
  if (given.has("days")) {
    return given.number("days");
  }
  if (given.has("hours")) {
    return given.number("hours") / 24;
  }
  return missing_input("the time is missing", "write days=... or hours=...");
}

// Saturated density: as given, at the temperature given, or 17.3 at 20 degrees.
double saturated_of(const Given& given, const char* name) {
  if (given.has(name)) {
    return given.number(name);
  }
  return given.has("T_C") ? care::absolute_humidity({given.number("T_C")}, {100})
                          : care::saturated_at_20_c;
}

Result<Reckoned> tracer(const Given& given) {
  const double before = given.number("C0_above_background");
  const double after = given.number("C1_above_background");
  const auto days = days_of(given);
  if (!days) {
    return days.problem();
  }
  if (after > before || *days <= 0) {
    return Problem{Fault::refused, "a tracer that grows, or no time, gives no leakage", "",
                   "give the later reading as C1_above_background and a time above 0"};
  }
  return Reckoned{care::air_changes_of(before, after, *days)};
}

Result<Reckoned> leaked(const Given& given) {
  const auto days = days_of(given);
  if (!days) {
    return days.problem();
  }
  return Reckoned{care::humidity_after({given.number("RH0_pct")}, {given.number("RH_room_pct")},
                                       1 / given.number("N_per_day"), *days)
                      .value};
}

// Kilograms a cubic metre, as given or from mass and volume.
Result<double> loading_of(const Given& given) {
  if (given.has("B_kg_per_m3")) {
    return given.number("B_kg_per_m3");
  }
  if (given.has("mass_kg") && given.has("V_m3") && given.number("V_m3") > 0) {
    return given.number("mass_kg") / given.number("V_m3");
  }
  return missing_input("the loading is missing",
                       "write B_kg_per_m3=..., or mass_kg=... and V_m3=...");
}

Result<Reckoned> buffered(const Given& given) {
  const auto loading = loading_of(given);
  const auto days = days_of(given);
  if (!loading || !days) {
    return loading ? days.problem() : loading.problem();
  }
  const care::Buffer buffer{given.number("M_g_per_kg_pct"), *loading,
                            given.number("N_per_day")};
  const double tau = care::buffered_tau_days(buffer, saturated_of(given, "csat_g_m3"));
  return Reckoned{
      care::humidity_after({given.number("RH0_pct")}, {given.number("RH_room_pct")}, tau, *days)
          .value};
}

Result<care::Outside> outside_of(const Given& given) {
  double difference = given.number("D", 0);
  if (!given.has("D")) {
    if (!given.has("RH_room_pct") || !given.has("RH_case_pct")) {
      return missing_input("the difference of humidity is missing",
                           "write D=0.15, or RH_room_pct=... and RH_case_pct=...");
    }
    difference = std::fabs(given.number("RH_room_pct") - given.number("RH_case_pct")) / 100;
  }
  return care::Outside{saturated_of(given, "Ceq_g_m3"), difference, given.number("V_m3"),
                       given.number("N_per_day")};
}

Result<Reckoned> mass(const Given& given) {
  const auto outside = outside_of(given);
  if (!outside) {
    return outside.problem();
  }
  return Reckoned{care::buffer_mass_kg(*outside, given.number("t_days"),
                                       given.number("MH_g_per_kg_pct"), given.number("F_pct"))};
}

Result<Reckoned> interval(const Given& given) {
  const auto outside = outside_of(given);
  if (!outside) {
    return outside.problem();
  }
  if (outside->difference <= 0) {
    return Problem{Fault::refused,
                   "without a difference of humidity the buffer is never used up", "",
                   "give the worst season's difference"};
  }
  return Reckoned{care::buffer_days(*outside, given.number("mass_kg"),
                                    given.number("MH_g_per_kg_pct"), given.number("F_pct"))};
}

std::vector<Input> outside_inputs(std::vector<Input> first) {
  first.push_back({"V_m3", "m3", 1e-6, 1000});
  first.push_back(changes());
  first.push_back({"MH_g_per_kg_pct", "g/(kg %)", 0.1, 50});
  first.push_back({"F_pct", "%", 0.1, 50});
  first.push_back(optional("D", "", 0, 1));
  first.push_back(optional("RH_room_pct", "%", 0, 100));
  first.push_back(optional("RH_case_pct", "%", 0, 100));
  first.push_back(optional("Ceq_g_m3", "g/m3", 0.1, 200));
  first.push_back(optional("T_C", "C", -20, 60));
  return first;
}

const char* const balance =
    "mass balance of a leaking volume with a buffer, behind G. Thomson 1977, Studies in "
    "Conservation 22 (from memory)";
const char* const mass_source =
    "Q = Ceq D V N t / (MH F), form after S. Weintraub 2002 and Canadian Conservation "
    "Institute "
    "Technical Bulletin 33, 2018 (from memory)";

std::vector<Formula> leak_formulas() {
  return {
      {.name = "empty_half_time",
       .what = "half-time of empty case",
       .inputs = {changes()},
       .unit = "d",
       .source = "exponential decay; Breum and Perera 1984, Building and Environment 19",
       .notes = "",
       .value =
           [](const std::vector<double>& in) { return care::empty_half_time_days(in[0]); }},
      {.name = "air_changes",
       .what = "air-exchange rate from tracer decay",
       .inputs = {{"C0_above_background", "", 1e-9, 1e9},
                  {"C1_above_background", "", 1e-9, 1e9},
                  optional("hours", "h", 0, 1e6),
                  optional("days", "d", 0, 1e5)},
       .unit = "1/d",
       .source = "N = ln(C0/C1)/t; Breum and Perera 1984, Building and Environment 19",
       .notes = "both readings above background",
       .reckon = tracer},
      {.name = "leaked_humidity",
       .what = "RH in empty leaking case",
       .inputs = {{"RH0_pct", "%", 0, 100},
                  {"RH_room_pct", "%", 0, 100},
                  changes(),
                  optional("days", "d", 0, 1e5),
                  optional("hours", "h", 0, 1e6),
                  {"T", "", 0, 0, false, true, "constant"}},
       .unit = "%",
       .source = "exponential decay; Breum and Perera 1984, Building and Environment 19",
       .notes = "temperature constant",
       .reckon = leaked},
      {.name = "tarnish_years",
       .what = "years to silver dose threshold",
       .inputs = {{"H2S_ppt", "ppt", 0.1, 1e6}, {"dose_ppb_yr", "ppb yr", 0.01, 1000}},
       .unit = "yr",
       .source = "Ankersmit, Tennent and Watts 2005, Atmospheric Environment 39: 2.5 ppb years",
       .notes = "a guide: real tarnish is not explained by this gas alone",
       .value =
           [](const std::vector<double>& in) { return care::years_to_tarnish(in[0], in[1]); }},
  };
}

}  // namespace

std::vector<Formula> buffer_formulas() {
  std::vector<Formula> list = leak_formulas();
  const Input reservoir{"M_g_per_kg_pct", "g/(kg %)", 0.1, 50};
  const std::vector<Formula> gels = {
      {.name = "buffered_half_time",
       .what = "half-time of buffered case",
       .inputs =
           {reservoir, {"B_kg_per_m3", "kg/m3", 0.1, 500}, changes(), {"T_C", "C", 0, 40}},
       .unit = "d",
       .source = balance,
       .notes = reservoir_note,
       .value =
           [](const std::vector<double>& in) {
             return care::buffered_half_time_days({in[0], in[1], in[2]}, {in[3]});
           }},
      {.name = "buffered_humidity",
       .what = "RH in buffered case",
       .inputs = {{"RH0_pct", "%", 0, 100},
                  {"RH_room_pct", "%", 0, 100},
                  reservoir,
                  changes(),
                  optional("V_m3", "m3", 1e-6, 1000),
                  optional("B_kg_per_m3", "kg/m3", 0, 500),
                  optional("mass_kg", "kg", 0, 1e5),
                  optional("days", "d", 0, 1e5),
                  optional("hours", "h", 0, 1e6),
                  optional("csat_g_m3", "g/m3", 0.1, 200),
                  optional("T_C", "C", -20, 60)},
       .unit = "%",
       .source = balance,
       .notes = reservoir_note,
       .reckon = buffered},
      {.name = "buffer_mass",
       .what = "gel mass",
       .inputs = outside_inputs({{"t_days", "d", 0, 1e5}}),
       .unit = "kg",
       .source = mass_source,
       .notes = reservoir_note,
       .reckon = mass},
      {.name = "buffer_days",
       .what = "days until the buffer is changed",
       .inputs = outside_inputs({{"mass_kg", "kg", 0, 1e5}}),
       .unit = "d",
       .source = mass_source,
       .notes = reservoir_note,
       .reckon = interval},
      {.name = "buffer_rule",
       .what = "conditioned gel mass, quick rule",
       .inputs = {{"volume_ft3", "ft3", 0, 1e5},
                  {"lb_dry_per_ft3", "lb/ft3", 0, 100},
                  {"conditioning_allowance", "", 0, 2}},
       .unit = "lb",
       .source =
           "P. Bye, Conservation DistList 16:74, 2003: 0.4 lb a cubic foot, a quarter more "
           "when conditioned",
       .notes = "practice, not physics",
       .value = [](const std::vector<double>& in) { return in[0] * in[1] * (1 + in[2]); }},
      {.name = "buffer_dry_rule",
       .what = "gel mass, low-RH practice",
       .inputs = {{"volume_m3", "m3", 0, 1e4}, {"kg_per_m3", "kg/m3", 0, 500}},
       .unit = "kg",
       .source = "B. Knight, Conservation DistList 10:29, 1996: about 20 kg a cubic metre",
       .notes = "practice, not physics",
       .value = [](const std::vector<double>& in) { return in[0] * in[1]; }},
  };
  list.insert(list.end(), gels.begin(), gels.end());
  return list;
}

}  // namespace backmark::desk
