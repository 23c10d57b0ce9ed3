#include "desk/light_words.h"

#include <cmath>

#include "base/text.h"
#include "desk/calendar.h"
#include "desk/measures.h"
#include "desk/or_null.h"

namespace backmark::desk {

namespace {

using care::PieceLight;

Json limit(double value) {
  return value > 0 ? Json(value) : Json(nullptr);
}

std::string class_of(const PieceLight& one) {
  return std::string(reference::code_of(one.sensitivity.light_class));
}

std::string thousands(double value) {
  std::string digits = fmt::format("{:.0f}", value);
  for (std::size_t at = digits.size(); at > 3;) {
    at -= 3;
    digits.insert(at, 1, ' ');
  }
  return digits;
}

// The day of the run, counted from opening; "day 37" if no opening day is set.
std::string on_day(const care::LightWish& wish, int day) {
  return wish.opens == model::unknown_day ? fmt::format("day {}", day + 1)
                                          : iso_day(wish.opens + day);
}

std::string use_of(const PieceLight& one) {
  if (!one.dose) {
    return "ask: " + join(one.ask, "; ");
  }
  if (!one.share_of_run) {
    return "no limit";
  }
  if (one.may.run.value <= 0) {
    return "nothing left: had it in the year before";
  }
  return fmt::format("{:>5.0f} % of {}", 100 * *one.share_of_run, thousands(one.may.run.value));
}

std::string flags_of(const PieceLight& one) {
  std::string flags;
  flags += one.over_run() ? "  TOO MUCH" : "";
  flags += one.over_level() ? fmt::format("  above {:g} lx", one.may.level.value) : "";
  flags += one.over_uv() ? "  ultraviolet" : "";
  flags += one.light.near_source ? "  lamp too near to be reckoned" : "";
  return flags;
}

}  // namespace

Json light_json(const PieceLight& one) {
  return {{"number", one.piece->number},
          {"case", one.contents->in->key},
          {"class", class_of(one)},
          {"decided_by",
           {{"part", one.sensitivity.part},
            {"why", one.sensitivity.why},
            {"counted", one.sensitivity.counted},
            {"source", one.sensitivity.source},
            {"status", one.sensitivity.status}}},
          {"lux", or_null(one.light.lux)},
          {"lux_from", one.light.from},
          {"uv_uw_lm", or_null(one.light.uv_uw_lm)},
          {"hours_per_day", or_null(one.contents->in->hours_per_day)},
          {"dose_lxh", or_null(one.dose)},
          {"limit_lux", limit(one.may.level.value)},
          {"limit_lux_from", one.may.level_from},
          {"budget_lxh", one.may.run_from.empty() ? Json(nullptr) : Json(one.may.run.value)},
          {"budget_from", one.may.run_from},
          {"past_year_lxh", one.may.past_year.value},
          {"past_lxh", one.may.past.value},
          {"share_of_budget", or_null(one.share_of_run)},
          {"over_budget", one.over_run()},
          {"over_lux", one.over_level()},
          {"over_uv", one.over_uv()},
          {"blue_wool", one.sensitivity.step == 0 ? Json(nullptr) : Json(one.sensitivity.step)},
          {"fade_mlxh", limit(one.fade_mlxh)},
          {"fade_with_uv", one.fade_with_uv},
          {"share_of_fade",
           one.dose && one.fade_mlxh > 0 ? Json(one.share_of_fade) : Json(nullptr)},
          {"share_of_fade_with_past",
           one.dose && one.fade_mlxh > 0 ? Json(one.share_with_past) : Json(nullptr)},
          {"ask", one.ask}};
}

Json turn_json(const care::Turn& turn) {
  Json spells = Json::array();
  for (const care::Spell& spell : turn.spells) {
    spells.push_back({{"number", spell.piece->number},
                      {"first_day", spell.first_day},
                      {"days", spell.days}});
  }
  return {{"place_of", turn.place->piece->number},
          {"case", turn.place->contents->in->key},
          {"spells", spells},
          {"empty_days", turn.empty_days}};
}

Json dimmer_json(const care::CaseDimmer& one) {
  Json steps = Json::array();
  for (const care::Dimmed& step : one.steps) {
    steps.push_back({{"share", step.share},
                     {"lux_low", step.lux_low},
                     {"lux_high", step.lux_high},
                     {"over_budget", step.over_run},
                     {"over_lux", step.over_level},
                     {"days", step.days}});
  }
  return {{"case", one.contents->in->key}, {"needed_share", one.needed}, {"steps", steps}};
}

std::string case_line(const care::CaseContents& contents) {
  const auto& hours = contents.in->hours_per_day;
  return fmt::format("\n{}: {} pieces, {} fixtures, {} readings, lights on {}\n",
                     contents.in->key, contents.placed.size(), contents.fixtures.size(),
                     contents.readings.size(),
                     hours ? fmt::format("{:g} hours a day", *hours) : "for hours not said");
}

std::string light_line(const PieceLight& one) {
  return without_trailing_spaces(
             fmt::format("  {} {}{} {:>6}  {}{}", padded(one.piece->number, 10), class_of(one),
                         one.sensitivity.counted ? "?" : " ",
                         one.light.lux ? fmt::format("{:.0f} lx", one.light.lux->value) : "-",
                         padded(use_of(one), 24), flags_of(one))) +
         "\n";
}

std::string light_in_full(const PieceLight& one, const care::LightWish& wish) {
  std::string text = fmt::format("{}  {}\n", one.piece->number, one.piece->title);
  text += fmt::format("{} decides: {}{}\n  {}, {}\n", class_of(one),
                      one.sensitivity.part.empty() ? "" : one.sensitivity.part + ", ",
                      one.sensitivity.why, one.sensitivity.source, one.sensitivity.status);
  if (one.light.lux) {
    text += fmt::format("{:.1f} lx, {}; ultraviolet {}\n", one.light.lux->value, one.light.from,
                        one.light.uv_uw_lm
                            ? fmt::format("{:g} microwatts a lumen", *one.light.uv_uw_lm)
                            : "not measured, counted as not removed");
  }
  if (!one.may.level_from.empty()) {
    text +=
        fmt::format("may have at most {:g} lx ({})\n", one.may.level.value, one.may.level_from);
  }
  if (!one.may.run_from.empty()) {
    text += fmt::format(
        "may have {} lx h in the run ({}), {} had in the year before taken off\n",
        thousands(one.may.run.value), one.may.run_from, thousands(one.may.past_year.value));
  }
  for (const std::string& ask : one.ask) {
    text += "ask: " + ask + "\n";
  }
  if (one.dose) {
    text += fmt::format("will have {:.1f} lx x {:g} h x {:.0f} days = {} lx h{}{}\n",
                        one.light.lux->value, *one.contents->in->hours_per_day, wish.days,
                        thousands(one.dose->value),
                        one.share_of_run && one.may.run.value > 0
                            ? fmt::format(", {:.0f} % of it", 100 * *one.share_of_run)
                            : "",
                        flags_of(one));
  }
  if (one.dose && one.fade_mlxh > 0) {
    text += fmt::format(
        "one noticeable fade: {:g} million lx h (blue wool {}, light {} ultraviolet); this run "
        "{:.1f} % of it, with what is known of the past {:.1f} %\n",
        one.fade_mlxh, one.sensitivity.step, one.fade_with_uv ? "with" : "without",
        100 * one.share_of_fade, 100 * one.share_with_past);
  }
  return text;
}

std::string rotation_text(const care::Rotation& rotation, const care::LightWish& wish) {
  if (rotation.turns.empty()) {
    return "\nNobody needs to change places.\n";
  }
  std::string text =
      fmt::format("\nTaking turns: {} changes{}\n", rotation.changes,
                  rotation.changes == rotation.at_least
                      ? ", and fewer are not possible with the pieces that are free"
                      : fmt::format("; no plan has fewer than {}", rotation.at_least));
  for (const care::Turn& turn : rotation.turns) {
    std::vector<std::string> spells;
    for (const care::Spell& spell : turn.spells) {
      spells.push_back(fmt::format("{} from {} for {} days", spell.piece->number,
                                   on_day(wish, spell.first_day), spell.days));
    }
    if (turn.empty_days > 0) {
      spells.push_back(fmt::format("nobody for {} days", turn.empty_days));
    }
    text += fmt::format("  {} place of {}: {}\n", padded(turn.place->contents->in->key, 9),
                        turn.place->piece->number, join(spells, "; "));
  }
  return text;
}

std::string dimmer_text(const care::CaseDimmer& one, const care::LightWish& wish) {
  std::string text = fmt::format("\nDimming {}: ", one.contents->in->key);
  text += one.needed >= 1 ? "not needed\n"
          : one.needed > 0
              ? fmt::format("at {:.0f} % of the present light every piece may stay\n",
                            100 * one.needed)
              : "no level is low enough for all; exchange or cover pieces\n";
  for (const care::Dimmed& step : one.steps) {
    text += fmt::format(
        "  {:>3.0f} %  {:>4.0f} to {:<4.0f} lx  {:>3} over their run, {:>3} over "
        "their level; all may stay {:.0f} of {:.0f} days\n",
        100 * step.share, step.lux_low, step.lux_high, step.over_run, step.over_level,
        step.days, wish.days);
  }
  return text;
}

const std::vector<std::string>& light_cautions() {
  static const std::vector<std::string> list = {
      "Limits are of the rule named; a lender or a conservator may ask for less.",
      "Light that fell before and was not noted is not counted. Fading does not come back.",
      "Fixtures are reckoned as points at their peak; measure before you rely on them."};
  return list;
}

}  // namespace backmark::desk
