#include <algorithm>
#include <array>

#include "base/text.h"
#include "care/climate_plan.h"
#include "care/load_plan.h"
#include "care/rights.h"
#include "desk/calendar.h"
#include "desk/care_checks.h"
#include "desk/screened.h"

namespace backmark::desk {

namespace {

using care::CaseClimate;
using care::CaseContents;
using care::ClimateWant;
using model::Piece;
using model::Use;

void add_wants(CareCheck& check, const std::vector<ClimateWant>& wants, const char* unit) {
  for (const ClimateWant& want : wants) {
    std::string line =
        fmt::format("{}: {}; to be waived by {} ({})", want.who,
                    range_words(want.low, want.high, unit), want.waiver, want.status);
    if (std::find(check.more.begin(), check.more.end(), line) == check.more.end()) {
      check.more.push_back(std::move(line));
    }
  }
}

CareCheck air_check(const CareGround& ground, const CaseContents& alone) {
  const std::vector<CaseContents> only{alone};
  const std::vector<CaseClimate> plan = care::climate_plan(ground.show, only);
  const CaseClimate& climate = plan.front();
  CareCheck check{.what = "Air"};
  const auto held = alone.in->rh_percent;
  if (climate.rh.conflict() || climate.c.conflict()) {
    check.state = CareState::broken;
    check.words = "Its own parts and its lender exclude each other.";
  } else if (climate.rh_wants.empty() && climate.c_wants.empty()) {
    check.words = "Nothing on record asks for one air or another.";
  } else {
    const bool outside = held && (*held < climate.rh.low || *held > climate.rh.high);
    check.state = outside ? CareState::broken : held ? CareState::holds : CareState::told;
    check.words = fmt::format("It bears {}, {}.", range_words(climate.rh, "% humidity"),
                              range_words(climate.c, "degrees"));
    if (held) {
      check.words +=
          fmt::format(" Its case is held at {:g} %{}.", *held, outside ? ": outside" : "");
    }
  }
  add_wants(check, climate.rh_wants, "%");
  add_wants(check, climate.c_wants, "degrees");
  for (const care::KeepOut& out : climate.keep_out) {
    if (!out.harmed.empty()) {
      check.state = CareState::broken;
      check.words += fmt::format(" {} in its case harms it.", out.what);
    }
  }
  return check;
}

CareCheck weight_check(const CareGround& ground, CaseContents alone, model::Placement hung) {
  hung.shelf = 0;
  alone.placed = {&hung};
  const std::vector<CaseContents> only{alone};
  const auto plan = care::load_plan(ground.show, only);
  const care::MountLoad& load = plan.mounts.front();
  CareCheck check{.what = "Weight"};
  if (!load.mass_g) {
    check.state = CareState::ask;
    check.words = "Never weighed.";
  } else {
    check.words =
        fmt::format("{:.0f} g: a mount carries {:.2f} newtons.", *load.mass_g, *load.newtons);
  }
  if (load.drop_mm) {
    check.words += fmt::format(" The cord drops {:.0f} mm.", *load.drop_mm);
  }
  check.more = {"The fabricator and the local code decide what a mount or a shelf may carry."};
  return check;
}

std::string in_twenty(double p) {
  return p >= 0.975  ? "20 chances in 20"
         : p < 0.025 ? "less than 1 chance in 20"
                     : fmt::format("{:.0f} in 20", std::max(1.0, 20 * p));
}

CareCheck law_check(const assay::Screened& one) {
  CareCheck check{.what = one.word};
  check.state = one.state == assay::State::hold  ? CareState::held
                : one.state == assay::State::ask ? CareState::ask
                                                 : CareState::holds;
  check.words =
      fmt::format("{}, {}: it may be {}, {}. Ask for {}.", one.rule->law, one.rule->place,
                  one.rule->taxon, in_twenty(one.p_restricted), one.rule->ask);
  check.more = {"Ask and hold: " + one.rule->ask,
                "Touches: " + join(one.rule->routes, ", "),
                one.rule->means,
                one.known,
                one.p_before ? fmt::format("That the event was before the day: {}",
                                           in_twenty(*one.p_before))
                             : std::string("Whether the event was before the day is not known"),
                fmt::format("{}, {}; looked at {}", one.rule->source, one.rule->status,
                            one.rule->checked)};
  return check;
}

constexpr std::array<std::pair<Use, const char*>, 3> uses{
    {{Use::show, "shown"}, {Use::print, "printed"}, {Use::web, "put on the web"}}};
constexpr std::array<std::pair<Use, const char*>, 2> gated_uses{
    {{Use::examine, "examined"}, {Use::photograph, "photographed"}}};

std::string answer_words(const model::Permission* held) {
  if (held == nullptr) {
    return "nobody asked: no";
  }
  constexpr std::string_view words[] = {"asked, no answer: no", "yes", "refused"};
  std::string text(words[static_cast<std::size_t>(held->leave)]);
  text += held->day == model::unknown_day ? "" : ", " + to_long_day(held->day);
  text += held->terms.empty() ? "" : "; " + held->terms;
  return text + (held->credit.empty() ? "" : "; credit " + held->credit);
}

CareCheck leave_check(const CareGround& ground, const Piece& piece) {
  const care::Rights rights(ground.show);
  const auto gate = rights.gate(piece);
  CareCheck check{.what = "Leave"};
  std::vector<std::string> may;
  std::vector<std::string> may_not;
  const auto add = [&](const auto& named) {
    (rights.may(piece, named.first) ? may : may_not).emplace_back(named.second);
    check.more.push_back(fmt::format("{}: {}", named.second,
                                     answer_words(rights.answer(piece.id.value, named.first))));
  };
  for (const auto& named : uses) {
    add(named);
  }
  for (const auto& named : gated_uses) {
    if (gate) {
      add(named);
    }
  }
  for (const model::Photograph& one : ground.show.photographs_of(piece.id)) {
    if (const auto* own = rights.answer(one.id.value, Use::print)) {
      check.more.push_back(fmt::format("{}, printed: {}", one.file, answer_words(own)));
    }
  }
  check.state = may_not.empty() ? CareState::holds : CareState::held;
  check.words = may.empty() ? "" : fmt::format("May be {}.", join(may, ", "));
  if (!may_not.empty()) {
    check.words +=
        fmt::format("{}Not to be {} yet.", may.empty() ? "" : " ", join(may_not, ", "));
  }
  if (gate) {
    check.words += fmt::format(" Its community must answer first ({}).", *gate);
  }
  return check;
}

}  // namespace

std::vector<CareCheck> piece_checks(const CareGround& ground,
                                    const Piece& piece,
                                    const CaseContents* in,
                                    const model::Placement* placement) {
  const model::Case none;
  model::Placement at = placement != nullptr ? *placement : model::Placement{.piece = piece.id};
  CaseContents alone = in != nullptr ? *in : CaseContents{.in = &none};
  alone.placed = {&at};
  const std::vector<CaseContents> only{alone};
  std::vector<CareCheck> checks{
      light_check(care::light_plan(ground.show, only, ground.wish).front(), ground.wish),
      air_check(ground, alone), weight_check(ground, alone, at)};
  for (const assay::Screened& one :
       screen_piece(ground.show, piece, ground.last, ground.opening)) {
    checks.push_back(law_check(one));
  }
  checks.push_back(leave_check(ground, piece));
  return checks;
}

}  // namespace backmark::desk
