#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "care/rotation.h"
#include "desk/cases.h"
#include "desk/each.h"
#include "desk/light_words.h"
#include "desk/measures.h"
#include "press/job.h"

namespace backmark::desk {

namespace {

using care::LightWish;
using care::PieceLight;

struct Report {
  LightWish wish;
  bool every_day = true;  // nobody said on how many days the lights are on
  std::vector<care::CaseContents> contents;
  std::vector<PieceLight> plan;
  care::Rotation rotation;
  std::vector<care::CaseDimmer> dimmers;
  std::vector<std::string> unplaced;  // in the show and in no case
};

Result<std::string> rule_of(const Call& call) {
  const auto rules = reference::light_rules();
  const std::string rule = call.has("rule") ? call.text("rule") : rules.front();
  if (std::find(rules.begin(), rules.end(), rule) == rules.end()) {
    return Problem{Fault::bad_input, fmt::format("there is no rule \"{}\"", rule), "--rule",
                   "rules are: " + join(rules, ", ")};
  }
  return rule;
}

Result<LightWish> wish_of(const Call& call, const model::Show& show) {
  const auto rule = rule_of(call);
  if (!rule) {
    return rule.problem();
  }
  const auto days = days_of_run(call, show);
  if (!days) {
    return days.problem();
  }
  LightWish wish{.rule = *rule,
                 .opens = press::parse_day(show.setting("opens")).value_or(model::unknown_day),
                 .days = std::floor(*days)};
  if (auto done = take(call, "dim", {0, 1, true, ""}, wish.dim); !done) {
    return done.problem();
  }
  return wish;
}

std::vector<std::string> unplaced_in(const model::Show& show) {
  std::vector<std::int32_t> placed;
  for (const model::Placement& one : show.all<model::Placement>()) {
    placed.push_back(one.piece.value);
  }
  std::sort(placed.begin(), placed.end());
  std::vector<std::string> numbers;
  for (const model::Pick& pick : show.all<model::Pick>()) {
    if (pick.in_show && !std::binary_search(placed.begin(), placed.end(), pick.piece.value)) {
      numbers.push_back(show.find(pick.piece)->number);
    }
  }
  return numbers;
}

Json to_json(const Report& report) {
  Json pieces = Json::array();
  for (const PieceLight& one : report.plan) {
    pieces.push_back(light_json(one));
  }
  Json turns = Json::array();
  for (const care::Turn& turn : report.rotation.turns) {
    turns.push_back(turn_json(turn));
  }
  Json dimmers = Json::array();
  for (const care::CaseDimmer& one : report.dimmers) {
    dimmers.push_back(dimmer_json(one));
  }
  return {{"rule", report.wish.rule},
          {"days", report.wish.days},
          {"every_day", report.every_day},
          {"dim", report.wish.dim},
          {"pieces", pieces},
          {"rotation",
           {{"changes", report.rotation.changes},
            {"at_least", report.rotation.at_least},
            {"turns", turns}}},
          {"dimmer", dimmers},
          {"unplaced", report.unplaced},
          {"notes", light_cautions()}};
}

std::string summary(const Report& report) {
  int over = 0;
  int asked = 0;
  int counted = 0;
  for (const PieceLight& one : report.plan) {
    over += one.over_run();
    asked += !one.dose;
    counted += one.sensitivity.counted;
  }
  std::string text = fmt::format(
      "{} pieces in {} cases, {:.0f} days{}; limits: {}.\n{} pass what they may have in the "
      "run; "
      "{} cannot be reckoned yet; {} are counted as high because the record does not say what "
      "decides.\n",
      report.plan.size(), report.contents.size(), report.wish.days,
      report.every_day ? " (every day from opening to the last)" : "", report.wish.rule, over,
      asked, counted);
  if (!report.unplaced.empty()) {
    text += fmt::format("{} pieces of the show lie in no case: {}.\n", report.unplaced.size(),
                        shortened(join(report.unplaced, ", "), 60));
  }
  return text;
}

std::string to_text(const Report& report) {
  std::string text = summary(report);
  const care::CaseContents* in = nullptr;
  for (const PieceLight& one : report.plan) {
    if (one.contents != in) {
      in = one.contents;
      text += case_line(*in);
    }
    text += light_line(one);
  }
  text += rotation_text(report.rotation, report.wish);
  for (const care::CaseDimmer& one : report.dimmers) {
    text += dimmer_text(one, report.wish);
  }
  text += "\n";
  for (const std::string& caution : light_cautions()) {
    text += caution + "\n";
  }
  return text;
}

Report report_on(const model::Show& show, const LightWish& wish) {
  Report report{.wish = wish};
  report.contents = care::contents_of(show);
  report.plan = care::light_plan(show, report.contents, wish);
  report.rotation = care::rotation(show, report.plan, wish);
  report.dimmers = care::dimmers(report.plan, wish);
  report.unplaced = unplaced_in(show);
  return report;
}

Result<Answer> one_piece(const Report& report, const model::Piece& piece) {
  for (const PieceLight& one : report.plan) {
    if (one.piece->id == piece.id) {
      return Answer{light_json(one), light_in_full(one, report.wish), {}};
    }
  }
  return Problem{Fault::not_found, fmt::format("{} lies in no case", piece.number), "",
                 fmt::format("write \"backmark put SHOW '{}' --case KEY\"", piece.number)};
}

Result<Answer> run(const Call& call, const Surroundings&) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto wish = wish_of(call, open->show);
  if (!wish) {
    return wish.problem();
  }
  if (call.has("number")) {
    const auto piece = find_piece(open->show, call.text("number"));
    if (!piece) {
      return piece.problem();
    }
    return one_piece(report_on(open->show, *wish), **piece);
  }
  Report report = report_on(open->show, *wish);
  report.every_day = !call.has("days");
  return Answer{to_json(report), to_text(report), {}};
}

}  // namespace

Operation light_show() {
  return {.name = "light",
          .help = "light of every placed piece over the run, against what it may have",
          .parameters = {show_folder(),
                         {.name = "number", .help = "one piece, in full", .positional = true},
                         {.name = "rule", .help = "of the limits: \"CIE 157\", merged, strict"},
                         {.name = "days",
                          .help = "on which the lights are on (opening to last day)"},
                         {.name = "dim",
                          .help = "what if every light had this share of its level"}},
          .run = run};
}

}  // namespace backmark::desk
