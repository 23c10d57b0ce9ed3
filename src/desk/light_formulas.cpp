#include "base/text.h"
#include "care/light_dose.h"
#include "desk/formula_lists.h"
#include "reference/light.h"

namespace backmark::desk {

namespace {

constexpr double many = 1e9;
const char* const reciprocity =
    "dose = lux x hours; reciprocity as in S. Michalski, Agent of Deterioration: Light, "
    "Ultraviolet and Infrared, Canadian Conservation Institute";
const char* const blue_wool_source =
    "S. Michalski, Canadian Conservation Institute, doses to a just noticeable fade; CIE "
    "157:2004; figures from memory";
const char* const limits_source = "CIE 157:2004, sections 3.1-3.2 (secondary)";

Input lux(const char* name = "lux") {
  return {name, "lx", 1e-6, 200000};
}

std::vector<Input> and_hours(std::vector<Input> inputs) {
  inputs.push_back({"hours", "h", 0, many, false, true});
  inputs.push_back({"hours_per_year", "h", 0, 8784, false, true});
  inputs.push_back({"hours_per_day", "h", 0, 24, false, true});
  inputs.push_back({"days", "d", 0, 1e6, false, true});
  inputs.push_back({"days_per_week", "d", 0, 7, false, true});
  inputs.push_back({"weeks", "", 0, 1e5, false, true});
  inputs.push_back({"years", "", 0, 1e5, false, true});
  return inputs;
}

// Hours in all, from whichever way they were given.
Result<double> hours_of(const Given& given) {
  const double years = given.number("years", 1);
  if (given.has("hours")) {
    return given.number("hours") * years;
  }
  if (given.has("hours_per_year")) {
    return given.number("hours_per_year") * years;
  }
  if (given.has("hours_per_day") && given.has("days")) {
    return given.number("hours_per_day") * given.number("days") * years;
  }
  if (given.has("hours_per_day") && given.has("days_per_week")) {
    return given.number("hours_per_day") * given.number("days_per_week") *
           given.number("weeks", 52) * years;
  }
  return missing_input(
      "the hours are missing",
      "write hours=..., hours_per_year=..., or hours_per_day=... with days=... "
      "or with days_per_week=... and weeks=...");
}

Result<Reckoned> annual_dose(const Given& given) {
  const auto hours = hours_of(given);
  if (!hours) {
    return hours.problem();
  }
  return Reckoned{care::light_dose({given.number("lux")}, *hours).value};
}

// "R3", "R3 high" or "high" under a rule.
Result<const reference::LightLimit*> limit_of(const Given& given) {
  const std::string asked = given.text("class");
  const std::string rule =
      given.has("rule") ? given.text("rule") : reference::light_rules().front();
  for (const reference::LightLimit& one : reference::light_limits()) {
    const std::string code(reference::code_of(one.sensitivity));
    if (one.rule == rule &&
        (asked == code || asked == one.word || asked == code + " " + one.word)) {
      return &one;
    }
  }
  return Problem{Fault::bad_input,
                 fmt::format("no class \"{}\" under the rule \"{}\"", asked, rule), "",
                 "classes are R0 to R3; rules are " + join(reference::light_rules(), ", ")};
}

struct Allowed {
  double lxh = 0;
  double lux = 0;
  std::string notes;
};

// The budget of a year and the level, as given or as the class has them.
Result<Allowed> allowed_of(const Given& given) {
  Allowed allowed{given.number("annual_lxh", 0), given.number("lux", 0), ""};
  if (given.has("class")) {
    const auto limit = limit_of(given);
    if (!limit) {
      return limit.problem();
    }
    allowed.lxh = given.has("annual_lxh") ? allowed.lxh : (*limit)->lxh_year;
    allowed.lux = given.has("lux") ? allowed.lux : (*limit)->lux;
    allowed.notes = fmt::format("rule {}: {}", (*limit)->rule, (*limit)->source);
    if (allowed.lxh == 0) {
      return Problem{Fault::refused, "this class has no limit", "",
                     "give annual_lxh=... if the house has one"};
    }
  }
  if (allowed.lxh == 0 || allowed.lux == 0) {
    return missing_input("the budget or the level is missing",
                         "write annual_lxh=... and lux=..., or class=R3 with rule=\"CIE 157\"");
  }
  return allowed;
}

Result<Reckoned> hours_allowed(const Given& given) {
  const auto allowed = allowed_of(given);
  if (!allowed) {
    return allowed.problem();
  }
  return Reckoned{care::permitted_hours({allowed->lxh}, {allowed->lux}), "", allowed->notes};
}

Result<Reckoned> days_allowed(const Given& given) {
  const auto allowed = allowed_of(given);
  if (!allowed) {
    return allowed.problem();
  }
  return Reckoned{
      care::permitted_hours({allowed->lxh}, {allowed->lux}) / given.number("hours_per_day"), "",
      allowed->notes};
}

std::vector<Input> allowed_inputs() {
  return {{"annual_lxh", "lx h", 1e-6, many, false, true},
          {"lux", "lx", 1e-6, 200000, false, true},
          {"class", "", 0, 0, false, true, "*"},
          {"rule", "", 0, 0, false, true, "*"}};
}

// Megalux hours to one fade: as given, or of a step of the scale.
Result<double> fade_dose(const Given& given) {
  if (given.has("mlxh_per_jnf")) {
    return given.number("mlxh_per_jnf");
  }
  if (!given.has("iso_blue_wool")) {
    return missing_input(
        "the dose to one fade is missing",
        "write mlxh_per_jnf=..., or iso_blue_wool=1 to 8 with uv=free or rich");
  }
  const double step = given.number("iso_blue_wool");
  for (const reference::BlueWool& one : reference::blue_wool()) {
    if (one.step == step) {
      return given.text("uv") == "rich" ? one.mlxh_with_uv : one.mlxh_without_uv;
    }
  }
  return Problem{Fault::bad_input, fmt::format("there is no blue wool step {:g}", step), "",
                 "steps are the whole numbers 1 to 8"};
}

std::vector<Input> fade_inputs() {
  return and_hours({lux(),
                    {"iso_blue_wool", "", 1, 8, false, true},
                    {"uv", "", 0, 0, false, true, "free|rich"},
                    {"mlxh_per_jnf", "Mlx h", 1e-6, 1e5, false, true}});
}

Result<Reckoned> years_to_fade(const Given& given) {
  const auto dose = fade_dose(given);
  const auto hours = hours_of(given);
  if (!dose || !hours) {
    return dose ? hours.problem() : dose.problem();
  }
  if (*hours <= 0) {
    return Problem{Fault::refused, "without hours of light nothing fades", "",
                   "give hours above 0"};
  }
  return Reckoned{care::years_to_dose(*dose, {given.number("lux")}, *hours)};
}

Result<Reckoned> fade_share(const Given& given) {
  const auto dose = fade_dose(given);
  if (!dose) {
    return dose.problem();
  }
  if (given.has("dose_lxh")) {
    return Reckoned{care::share_of_dose({given.number("dose_lxh")}, *dose)};
  }
  const auto hours = hours_of(given);
  if (!hours || !given.has("lux")) {
    return missing_input("the light is missing", "write lux=... and hours, or dose_lxh=...");
  }
  return Reckoned{care::share_of_dose(care::light_dose({given.number("lux")}, *hours), *dose)};
}

Result<Reckoned> lowest_limit(const Given& given) {
  double lowest = 0;
  for (const auto part : split(given.text("limits_lux"), ",")) {
    const auto limit = to_number(trim(part));
    if (!limit || *limit <= 0) {
      return Problem{Fault::bad_input, fmt::format("\"{}\" is no limit in lux", part), "",
                     "write limits_lux=50,150,300"};
    }
    lowest = lowest == 0 ? *limit : std::min(lowest, *limit);
  }
  return Reckoned{lowest};
}

std::vector<Formula> dose_formulas() {
  return {
      {.name = "light_dose",
       .what = "annual light dose",
       .inputs = and_hours({lux()}),
       .unit = "lx h",
       .source = reciprocity,
       .notes = "with years: of so many years; with weeks but no year: of those weeks",
       .reckon = annual_dose},
      {.name = "cumulative_dose",
       .what = "cumulative light dose",
       .inputs = {{"lx_h_per_year", "lx h", 0, 1e12}, {"years", "", 0, 1e5}},
       .unit = "Mlx h",
       .source = reciprocity,
       .notes = "",
       .value = [](const std::vector<double>& in) { return in[0] * in[1] / 1e6; }},
      {.name = "dose_ratio",
       .what = "dose ratio (reciprocity)",
       .inputs = {lux("lux_a"),
                  {"hours_a", "h", 0, many},
                  lux("lux_b"),
                  {"hours_b", "h", 1e-9, many}},
       .unit = "",
       .source = reciprocity,
       .notes = "dose of a by dose of b",
       .value =
           [](const std::vector<double>& in) {
             return care::light_dose({in[0]}, in[1]) / care::light_dose({in[2]}, in[3]);
           }},
      {.name = "ultraviolet",
       .what = "ultraviolet irradiance at limit",
       .inputs = {{"uv_uW_per_lm", "uW/lm", 0, 10000}, lux()},
       .unit = "mW/m2",
       .source = "definition: microwatts a lumen times lumens a square metre",
       .notes = "75 uW/lm is the old maximum (Thomson), 10 the present aim",
       .value =
           [](const std::vector<double>& in) {
             return care::ultraviolet_mw_m2(in[0], {in[1]});
           },
       .also = {"ultraviolet irradiance"}},
      {.name = "footcandles",
       .what = "footcandles as lux",
       .inputs = {{"fc", "lm/ft2", 0, many}},
       .unit = "lx",
       .source = "definition: 1 ft = 0.3048 m",
       .notes = "museum tables round 10.764 to 10",
       .value = [](const std::vector<double>& in) { return in[0] * care::lux_of_footcandle; }},
  };
}

}  // namespace

std::vector<Formula> light_formulas() {
  std::vector<Formula> list = dose_formulas();
  std::vector<Input> day_inputs = allowed_inputs();
  day_inputs.push_back({"hours_per_day", "h", 1e-6, 24});
  std::vector<Input> share_inputs = fade_inputs();
  share_inputs.front().optional = true;
  share_inputs.push_back({"dose_lxh", "lx h", 0, 1e12, false, true});
  const std::vector<Formula> limits = {
      {.name = "hours_allowed",
       .what = "permitted display hours per year",
       .inputs = allowed_inputs(),
       .unit = "h",
       .source = limits_source,
       .notes = "annual budget by level",
       .reckon = hours_allowed},
      {.name = "days_allowed",
       .what = "permitted display days per year",
       .inputs = day_inputs,
       .unit = "d",
       .source = limits_source,
       .notes = "annual budget by level and hours a day",
       .reckon = days_allowed},
      {.name = "years_to_fade",
       .what = "years to one just noticeable fade",
       .inputs = fade_inputs(),
       .unit = "yr",
       .source = blue_wool_source,
       .notes = "batches of blue wool differ; a step is a factor of two with and three without "
                "ultraviolet",
       .reckon = years_to_fade},
      {.name = "fade_share",
       .what = "share of one just noticeable fade used",
       .inputs = share_inputs,
       .unit = "",
       .source = blue_wool_source,
       .notes = "1 is one just noticeable fade",
       .reckon = fade_share},
      {.name = "case_limit",
       .what = "case illuminance limit (mixed contents, most sensitive governs)",
       .inputs = {{"limits_lux", "lx", 0, 0, false, false, "*"}},
       .unit = "lx",
       .source = "rule of museum practice: the most sensitive piece sets the level",
       .notes = "",
       .reckon = lowest_limit,
       .also = {"case illuminance limit"}},
  };
  list.insert(list.end(), limits.begin(), limits.end());
  return list;
}

}  // namespace backmark::desk
