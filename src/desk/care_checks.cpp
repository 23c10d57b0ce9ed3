#include "desk/care_checks.h"

#include <cmath>

#include "base/text.h"
#include "desk/or_null.h"

namespace backmark::desk {

namespace {

// What a day more or less of light means at the share of 1.
std::string of_hundred(double share) {
  return share < 0.005 ? "less than 1 of 100" : fmt::format("{:.0f} of 100", 100 * share);
}

std::string remedy(const care::PieceLight& light, const care::LightWish& wish) {
  const double days =
      care::days_within(light.may, light.light.lux.value_or(Lux{0}),
                        light.contents->in->hours_per_day.value_or(0), wish.days);
  if (light.may.run.value <= 0) {
    return "It had its light in the year before: let it rest, or show another in its place.";
  }
  if (light.over_level()) {
    return fmt::format("Turn the light down from {:.0f} to {:g} lux.", light.light.lux->value,
                       light.may.level.value);
  }
  return fmt::format("Show it for {:.0f} of the {:.0f} days, or turn the light down to {}.",
                     days, wish.days, of_hundred(std::floor(100 / *light.share_of_run) / 100));
}

void add_ground(CareCheck& check, const care::PieceLight& light) {
  const care::Sensitivity& decides = light.sensitivity;
  check.more.push_back(fmt::format("Decides: {}{} ({}{})",
                                   decides.part.empty() ? "" : decides.part + ", ", decides.why,
                                   reference::code_of(decides.light_class),
                                   decides.counted ? ", counted on the safe side" : ""));
  if (light.light.lux) {
    check.more.push_back(fmt::format(
        "{:.0f} lux, {}; ultraviolet {}", light.light.lux->value, light.light.from,
        light.light.uv_uw_lm ? fmt::format("{:g} microwatts a lumen", *light.light.uv_uw_lm)
                             : "not measured"));
  }
  if (!light.may.level_from.empty()) {
    check.more.push_back(fmt::format("May have at most {:g} lux ({})", light.may.level.value,
                                     light.may.level_from));
  }
  if (!light.may.run_from.empty()) {
    check.more.push_back(
        fmt::format("May have {:.0f} lux hours in the run ({}); {:.0f} had in the year before "
                    "are taken off",
                    light.may.run.value, light.may.run_from, light.may.past_year.value));
  }
  check.more.push_back(
      light.may.past.value > 0
          ? fmt::format("Light so far, before opening: {:.0f} lux hours", light.may.past.value)
          : std::string("Light so far, before opening: none is noted"));
  if (light.dose && light.fade_mlxh > 0) {
    check.more.push_back(
        fmt::format("{} of one noticeable fade in this run, {} with what is known of the past",
                    of_hundred(light.share_of_fade), of_hundred(light.share_with_past)));
  }
  check.more.push_back(fmt::format("{}, {}", decides.source, decides.status));
}

}  // namespace

std::string range_words(const std::optional<double>& low,
                        const std::optional<double>& high,
                        const char* unit) {
  return low && high ? fmt::format("{:g} to {:g} {}", *low, *high, unit)
         : low       ? fmt::format("at least {:g} {}", *low, unit)
         : high      ? fmt::format("at most {:g} {}", *high, unit)
                     : fmt::format("any {}", unit);
}

std::string range_words(const care::Common& common, const char* unit) {
  return range_words(common.of_low ? std::optional(common.low) : std::nullopt,
                     common.of_high ? std::optional(common.high) : std::nullopt, unit);
}

std::string days_words(double days) {
  return days < 2 ? fmt::format("{:.0f} hours", 24 * days) : fmt::format("{:.0f} days", days);
}

std::string_view word_of(CareState state) {
  constexpr std::string_view words[] = {"holds", "near", "broken", "held", "ask", "told"};
  return words[static_cast<std::size_t>(state)];
}

CareCheck light_check(const care::PieceLight& light, const care::LightWish& wish) {
  CareCheck check{.what = "Light", .share = light.share_of_run};
  if (light.contents->in->key.empty()) {
    check.words = "It lies in no case yet.";
  } else if (!light.dose || wish.days <= 0) {
    check.state = CareState::ask;
    check.share.reset();
    check.words =
        "Cannot be reckoned: " +
        (light.dose ? std::string("opening and last day are not set") : join(light.ask, "; ")) +
        ".";
  } else if (!light.share_of_run) {
    check.state = CareState::holds;
    check.words = "No limit: light does not change it.";
  } else {
    const bool broken = light.over_run() || light.over_level() || light.over_uv();
    check.state = broken                             ? CareState::broken
                  : *light.share_of_run > near_share ? CareState::near
                                                     : CareState::holds;
    check.words = light.may.run.value > 0 ? fmt::format("It reaches {} by the last day.",
                                                        of_hundred(*light.share_of_run))
                                          : std::string("Nothing is left for this run.");
    if (light.over_run() || light.over_level()) {
      check.words += " " + remedy(light, wish);
    }
    if (light.over_uv()) {
      check.words += " There is ultraviolet in the light: filter it.";
    }
  }
  add_ground(check, light);
  return check;
}

Json checks_json(const std::vector<CareCheck>& checks) {
  Json list = Json::array();
  for (const CareCheck& one : checks) {
    list.push_back({{"what", one.what},
                    {"state", word_of(one.state)},
                    {"words", one.words},
                    {"more", one.more},
                    {"share", or_null(one.share)}});
  }
  return list;
}

std::string checks_text(const std::vector<CareCheck>& checks) {
  std::string text;
  for (const CareCheck& one : checks) {
    text += fmt::format("{} {} {}\n", padded(std::string(word_of(one.state)), 7),
                        padded(one.what, 10), one.words);
    for (const std::string& line : one.more) {
      text += "          " + line + "\n";
    }
  }
  return text;
}

}  // namespace backmark::desk
