#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "care/climate_plan.h"
#include "care/leakage.h"
#include "desk/care_checks.h"
#include "desk/cases.h"
#include "desk/each.h"
#include "desk/measures.h"
#include "desk/or_null.h"

namespace backmark::desk {

namespace {

using care::CaseAir;
using care::CaseClimate;
using care::ClimateWant;
using care::Common;

const char* const cautions[] = {
    "Bands are of the table climate-bands and of what was required; a conservator may know the "
    "piece better.",
    "A leakage is measured and a reservoir is its supplier's figure; neither is guessed here.",
    "The tarnish guide counts hydrogen sulphide alone; real tarnish has other causes too."};

struct Report {
  care::Room room;
  double days = 0;
  std::optional<double> h2s_ppt;
  std::vector<care::CaseContents> contents;
  std::vector<CaseClimate> cases;
  std::vector<CaseAir> airs;
};

Json want_json(const ClimateWant& want) {
  return {{"number", want.piece->number}, {"who", want.who},       {"low", or_null(want.low)},
          {"high", or_null(want.high)},   {"waiver", want.waiver}, {"source", want.source},
          {"status", want.status}};
}

Json common_json(const Common& common) {
  Json json = {{"conflict", common.conflict()}};
  json["low"] = common.of_low == nullptr ? Json(nullptr) : Json(common.low);
  json["high"] = common.of_high == nullptr ? Json(nullptr) : Json(common.high);
  json["low_by"] = common.of_low == nullptr ? Json(nullptr) : want_json(*common.of_low);
  json["high_by"] = common.of_high == nullptr ? Json(nullptr) : want_json(*common.of_high);
  return json;
}

Json groups_json(const CaseClimate& one) {
  Json groups = Json::array();
  for (const care::ClimateGroup& group : one.rh_groups) {
    Json numbers = Json::array();
    for (const model::Piece* piece : group.pieces) {
      numbers.push_back(piece->number);
    }
    groups.push_back({{"low", group.low}, {"high", group.high}, {"numbers", numbers}});
  }
  return groups;
}

Json keep_out_json(const CaseClimate& one) {
  Json list = Json::array();
  for (const care::KeepOut& out : one.keep_out) {
    list.push_back({{"what", out.what},
                    {"verdict", out.verdict},
                    {"emits", out.emits},
                    {"harms", out.harmed},
                    {"note", out.note},
                    {"source", out.source},
                    {"status", out.status}});
  }
  return list;
}

Json air_json(const CaseAir& air) {
  return {{"volume_m3", air.volume_m3},
          {"absolute_g_m3", or_null(air.absolute_g_m3)},
          {"dew_point_c", or_null(air.dew_point_c)},
          {"warm_rh", or_null(air.warm_rh)},
          {"empty_half_days", or_null(air.empty_half_days)},
          {"buffered_half_days", or_null(air.buffered_half_days)},
          {"drift_percent", or_null(air.drift_percent)},
          {"days_within", or_null(air.days_within)},
          {"buffer_kg_for_run", or_null(air.buffer_kg_for_run)},
          {"buffer_change_days", or_null(air.buffer_change_days)},
          {"ask", air.ask}};
}

Json to_json(const Report& report) {
  Json cases = Json::array();
  for (std::size_t i = 0; i < report.cases.size(); ++i) {
    const CaseClimate& one = report.cases[i];
    Json way = Json::array();
    for (const ClimateWant* want : one.in_the_way) {
      way.push_back(want_json(*want));
    }
    cases.push_back({{"case", one.contents->in->key},
                     {"pieces", one.contents->placed.size()},
                     {"held_rh", or_null(one.contents->in->rh_percent)},
                     {"rh", common_json(one.rh)},
                     {"celsius", common_json(one.c)},
                     {"in_the_way", way},
                     {"groups", groups_json(one)},
                     {"air", air_json(report.airs[i])},
                     {"silver", one.silver},
                     {"organic", one.organic},
                     {"keep_out", keep_out_json(one)}});
  }
  Json json = {{"cases", cases},
               {"room",
                {{"celsius", or_null(report.room.celsius)},
                 {"rh_percent", or_null(report.room.rh_percent)}}},
               {"days", report.days},
               {"notes", cautions}};
  json["tarnish_years"] =
      report.h2s_ppt ? Json(care::years_to_tarnish(*report.h2s_ppt)) : Json(nullptr);
  return json;
}

std::string want_text(const ClimateWant& want) {
  const std::string range = want.low && want.high
                                ? fmt::format("{:g} to {:g}", *want.low, *want.high)
                            : want.low ? fmt::format("at least {:g}", *want.low)
                                       : fmt::format("at most {:g}", *want.high);
  return fmt::format("{}, {}: {} (to waive: {})", want.piece->number, want.who, range,
                     want.waiver);
}

std::string numbers_text(const std::vector<const model::Piece*>& pieces) {
  std::vector<std::string> numbers;
  for (const model::Piece* piece : pieces) {
    numbers.push_back(piece->number);
  }
  return shortened(join(numbers, ", "), 70);
}

std::string conflict_text(const CaseClimate& one) {
  std::string text =
      fmt::format("  No humidity serves all: at least {:g} and at most {:g} % are asked.\n",
                  one.rh.low, one.rh.high);
  constexpr std::size_t shown = 6;
  for (std::size_t i = 0; i < one.in_the_way.size() && i < shown; ++i) {
    text += "    " + want_text(*one.in_the_way[i]) + "\n";
  }
  if (one.in_the_way.size() > shown) {
    text += fmt::format("    and {} more (all with --json)\n", one.in_the_way.size() - shown);
  }
  text += fmt::format("  The fewest cases that serve all are {}:\n", one.rh_groups.size());
  for (const care::ClimateGroup& group : one.rh_groups) {
    text += group.low > group.high
                ? fmt::format("    alone, its own wishes exclude each other: {}\n",
                              numbers_text(group.pieces))
                : fmt::format("    {:g} to {:g} %, {} pieces: {}\n", group.low, group.high,
                              group.pieces.size(), numbers_text(group.pieces));
  }
  return text;
}

std::string held_text(const CaseClimate& one) {
  const auto& held = one.contents->in->rh_percent;
  if (!held || one.rh.conflict()) {
    return "";
  }
  const ClimateWant* passed = one.rh.passed_by(*held);
  return passed == nullptr
             ? fmt::format("  held at {:g} %: within\n", *held)
             : fmt::format("  HELD AT {:g} %: outside; {}\n", *held, want_text(*passed));
}

std::string air_text(const CaseAir& air, double run) {
  std::string text;
  if (air.absolute_g_m3) {
    text += fmt::format(
        "  its air: {:.1f} g of water in a cubic metre, dew point {:.1f} degrees{}\n",
        *air.absolute_g_m3, *air.dew_point_c,
        air.warm_rh ? fmt::format("; warmed by the lights {:.0f} %", *air.warm_rh) : "");
  }
  if (air.empty_half_days) {
    text += fmt::format(
        "  half of the difference to the room is gone in {}{}\n",
        days_words(*air.empty_half_days),
        air.buffered_half_days
            ? " empty, in " + days_words(*air.buffered_half_days) + " with its buffer"
            : "");
  }
  if (air.days_within) {
    text +=
        fmt::format("  left to itself it stays within for {}\n", days_words(*air.days_within));
  }
  if (air.buffer_kg_for_run) {
    text += fmt::format("  buffer for {:.0f} days with a drift of {:.0f} %: {:.1f} kg{}\n", run,
                        *air.drift_percent, *air.buffer_kg_for_run,
                        air.buffer_change_days ? ", or what is there changed every " +
                                                     days_words(*air.buffer_change_days)
                                               : "");
  }
  for (const std::string& ask : air.ask) {
    text += "  ask: " + ask + "\n";
  }
  return text;
}

std::string keep_out_text(const CaseClimate& one) {
  std::string text;
  for (const care::KeepOut& out : one.keep_out) {
    text += fmt::format(
        "  {}: {}{}{}{}\n", out.what, out.verdict == "unknown" ? "not known" : out.verdict,
        out.emits.empty() ? "" : ", gives off " + out.emits,
        out.harmed.empty() ? "" : fmt::format("; harms {} pieces here", out.harmed.size()),
        out.note.empty() ? "" : "; " + out.note);
  }
  return text;
}

std::string case_text(const CaseClimate& one, const CaseAir& air, double run) {
  std::string text =
      fmt::format("\n{}: {} pieces, {:.2f} m3; {}, {}\n", one.contents->in->key,
                  one.contents->placed.size(), air.volume_m3,
                  one.rh.conflict() ? "humidity in conflict" : range_words(one.rh, "% RH"),
                  one.c.conflict() ? "temperature in conflict" : range_words(one.c, "degrees"));
  text += one.rh.conflict() ? conflict_text(one) : held_text(one);
  if (one.c.conflict()) {
    text += fmt::format("  No temperature serves all: {}; {}\n", want_text(*one.c.of_low),
                        want_text(*one.c.of_high));
  }
  if (!one.silver.empty() && !one.organic.empty()) {
    text += fmt::format(
        "  Silver wants it dry and {} pieces do not: 45 to 50 %, and keep sulphur "
        "out; or part them.\n",
        one.organic.size());
  }
  return text + air_text(air, run) + keep_out_text(one);
}

std::string to_text(const Report& report) {
  std::string text =
      fmt::format("{} cases; room {}, {}; {:.0f} days.\n", report.cases.size(),
                  report.room.celsius ? fmt::format("{:g} degrees", *report.room.celsius)
                                      : "of unknown temperature (--celsius)",
                  report.room.rh_percent ? fmt::format("{:g} % RH", *report.room.rh_percent)
                                         : "of unknown humidity (--rh)",
                  report.days);
  for (std::size_t i = 0; i < report.cases.size(); ++i) {
    text += case_text(report.cases[i], report.airs[i], report.days);
  }
  if (report.h2s_ppt) {
    text += fmt::format(
        "\nSilver in air with {:g} ppt of hydrogen sulphide has had the least dose "
        "seen to harm it in {:.0f} years.\n",
        *report.h2s_ppt, care::years_to_tarnish(*report.h2s_ppt));
  }
  text += "\n";
  for (const char* caution : cautions) {
    text += std::string(caution) + "\n";
  }
  return text;
}

Result<Answer> run(const Call& call, const Surroundings&) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  Report report;
  const auto days = days_of_run(call, open->show);
  if (!days) {
    return days.problem();
  }
  report.days = *days;
  if (auto done =
          all_taken(take(call, "celsius", {-20, 45, false, "degrees"}, report.room.celsius),
                    take(call, "rh", {0, 100, true, "%"}, report.room.rh_percent),
                    take(call, "h2s", {0, 1e6, true, "ppt"}, report.h2s_ppt));
      !done) {
    return done.problem();
  }
  report.contents = care::contents_of(open->show);
  report.cases = care::climate_plan(open->show, report.contents);
  for (const CaseClimate& one : report.cases) {
    report.airs.push_back(care::air_of(one, report.room, report.days));
  }
  return Answer{to_json(report), to_text(report), {}};
}

}  // namespace

Operation climate_show() {
  return {.name = "climate",
          .help = "air of every case: what all bear, who is in whose way, how long it keeps",
          .parameters = {show_folder(),
                         {.name = "celsius", .help = "of the room"},
                         {.name = "rh", .help = "% relative humidity of the room"},
                         {.name = "days", .help = "of the run (opening to last day)"},
                         {.name = "h2s",
                          .help = "parts per trillion of hydrogen sulphide in the air"}},
          .run = run};
}

}  // namespace backmark::desk
