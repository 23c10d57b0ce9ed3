#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "care/climate_plan.h"
#include "care/load_plan.h"
#include "care/rights.h"
#include "care/rotation.h"
#include "desk/care_checks.h"
#include "desk/screened.h"

namespace backmark::desk {

namespace {

using care::CaseClimate;
using care::CaseContents;
using care::ClimateWant;
using care::PieceLight;

constexpr std::size_t named_at_most = 8;

std::string numbers_of(const std::vector<std::string>& numbers) {
  std::vector<std::string> first(
      numbers.begin(),
      numbers.begin() + static_cast<std::ptrdiff_t>(std::min(numbers.size(), named_at_most)));
  return join(first, ", ") + (numbers.size() > named_at_most
                                  ? fmt::format(" and {} more", numbers.size() - named_at_most)
                                  : std::string());
}

std::string pieces_of(std::size_t count) {
  return count == 1 ? "1 piece" : fmt::format("{} pieces", count);
}

void add_remedies(CareCheck& check,
                  const std::vector<PieceLight>& light,
                  const care::LightWish& wish,
                  bool ultraviolet) {
  for (const care::CaseDimmer& one : care::dimmers(light, wish)) {
    if (one.needed <= 0) {
      check.more.emplace_back(
          "No level is low enough for all: let some rest, or show others in their place");
    } else if (one.needed < 1) {
      check.more.push_back(fmt::format("At {:.0f} of 100 of the present light all may stay",
                                       std::floor(100 * one.needed)));
    }
  }
  if (ultraviolet) {
    check.more.emplace_back("There is ultraviolet in the light: filter it");
  }
}

CareCheck case_light(const CareGround& ground, const std::vector<PieceLight>& light) {
  CareCheck check{.what = "Light", .state = CareState::holds};
  std::vector<std::string> over;
  std::vector<std::string> unknown;
  bool ultraviolet = false;
  for (const PieceLight& one : light) {
    const CareCheck own = light_check(one, ground.wish);
    ultraviolet = ultraviolet || one.over_uv();
    if (own.state == CareState::broken) {
      over.push_back(one.piece->number);
    } else if (own.state == CareState::ask) {
      unknown.push_back(one.piece->number);
    }
    check.share =
        own.share ? std::max(check.share.value_or(0), std::min(*own.share, 99.0)) : check.share;
  }
  if (!over.empty()) {
    check.state = CareState::broken;
    check.words = fmt::format("{} of {} pass what they may have: {}.", over.size(),
                              light.size(), numbers_of(over));
    add_remedies(check, light, ground.wish, ultraviolet);
  } else {
    check.words = fmt::format("All {} stay within what they may have.", light.size());
  }
  if (!unknown.empty()) {
    check.state = over.empty() ? CareState::ask : check.state;
    check.words = (over.empty() ? "" : check.words + " ") +
                  fmt::format("{} cannot be reckoned: {}.", pieces_of(unknown.size()),
                              numbers_of(unknown));
  }
  check.more.push_back("Limits: " + ground.wish.rule +
                       fmt::format("; {:.0f} days", ground.wish.days));
  return check;
}

std::string want_words(const ClimateWant& want, const char* unit) {
  return fmt::format("{}, {}: {}; to be waived by {}", want.piece->number, want.who,
                     range_words(want.low, want.high, unit), want.waiver);
}

void add_conflict(CareCheck& check, const CaseClimate& climate) {
  for (std::size_t i = 0; i < climate.in_the_way.size() && i < named_at_most; ++i) {
    check.more.push_back(want_words(*climate.in_the_way[i], "%"));
  }
  for (const care::ClimateGroup& group : climate.rh_groups) {
    std::vector<std::string> numbers;
    for (const model::Piece* piece : group.pieces) {
      numbers.push_back(piece->number);
    }
    check.more.push_back(fmt::format("Together at {:g} to {:g} %: {}", group.low, group.high,
                                     numbers_of(numbers)));
  }
}

CareCheck humidity(const CaseClimate& climate) {
  CareCheck check{.what = "Humidity", .state = CareState::holds};
  const auto held = climate.contents->in->rh_percent;
  if (climate.rh.conflict()) {
    check.state = CareState::broken;
    check.words = fmt::format(
        "No humidity serves all: at least {:g} and at most {:g} % are asked. One side "
        "must be waived, or the pieces go into {} cases.",
        climate.rh.low, climate.rh.high, climate.rh_groups.size());
    add_conflict(check, climate);
    return check;
  }
  check.words = fmt::format("All agree at {}.", range_words(climate.rh, "%"));
  if (!held) {
    check.state = CareState::ask;
    check.words += " What is to be held is not said.";
    return check;
  }
  const ClimateWant* passed = climate.rh.passed_by(*held);
  check.words += fmt::format(" Held at {:g} %{}.", *held, passed ? ": outside" : "");
  if (passed != nullptr) {
    check.state = CareState::broken;
    check.more.push_back(want_words(*passed, "%"));
  }
  return check;
}

CareCheck warmth(const CaseClimate& climate) {
  CareCheck check{.what = "Warmth", .state = CareState::holds};
  if (climate.c.conflict()) {
    check.state = CareState::broken;
    check.words =
        fmt::format("No temperature serves all: at least {:g} and at most {:g} degrees.",
                    climate.c.low, climate.c.high);
    check.more = {want_words(*climate.c.of_low, "degrees"),
                  want_words(*climate.c.of_high, "degrees")};
  } else {
    check.words = fmt::format("All agree at {}.", range_words(climate.c, "degrees"));
  }
  return check;
}

CareCheck keeping(const CaseClimate& climate, double days) {
  const care::CaseAir air = care::air_of(climate, {}, days);
  CareCheck check{.what = "Leakage"};
  if (air.empty_half_days) {
    check.words = fmt::format(
        "Half of the difference to the room is gone in {}{}.", days_words(*air.empty_half_days),
        air.buffered_half_days
            ? " empty, in " + days_words(*air.buffered_half_days) + " with its buffer"
            : "");
  } else {
    check.state = CareState::ask;
    check.words = "How long it keeps its air is not known: have the leakage measured.";
  }
  return check;
}

// Silver and leather want different airs even where a range serves both.
void add_silver(std::vector<CareCheck>& checks, const CaseClimate& climate) {
  if (climate.silver.empty() || climate.organic.empty()) {
    return;
  }
  checks.push_back(
      {.what = "Silver",
       .state = CareState::near,
       .words = fmt::format("Silver wants it dry and {} do not: 45 to 50 %, and keep "
                            "sulphur out; or part them.",
                            pieces_of(climate.organic.size()))});
}

void add_keep_outs(std::vector<CareCheck>& checks, const CaseClimate& climate) {
  for (const care::KeepOut& out : climate.keep_out) {
    CareCheck check{.what = out.what,
                    .state = out.verdict == "avoid" ? CareState::broken : CareState::ask};
    check.words = out.verdict == "unknown"
                      ? "Not known."
                      : "To be " +
                            std::string(out.verdict == "avoid"     ? "avoided"
                                        : out.verdict == "isolate" ? "isolated"
                                                                   : "tested") +
                            ".";
    check.words += out.emits.empty() ? "" : fmt::format(" It gives off {}.", out.emits);
    check.words += out.harmed.empty()
                       ? ""
                       : fmt::format(" It harms {} here: {}.", pieces_of(out.harmed.size()),
                                     numbers_of(out.harmed));
    if (!out.note.empty()) {
      check.more.push_back(out.note);
    }
    if (!out.source.empty()) {
      check.more.push_back(out.source + ", " + out.status);
    }
    checks.push_back(std::move(check));
  }
}

CareCheck shelf_check(const care::ShelfLoad& load) {
  CareCheck check{.what = fmt::format("Shelf {}", load.shelf)};
  check.words = fmt::format("{} of {:.2f} kg as far as weighed", pieces_of(load.pieces.size()),
                            load.pieces_kg);
  if (!load.sag_worst_mm) {
    check.state = CareState::ask;
    check.words += "; ask for " + join(load.ask, "; ") + ".";
    return check;
  }
  const bool broken = *load.span_by_sag < care::sag_least || load.above_stress_limit();
  check.state = broken                                ? CareState::broken
                : !load.unweighed.empty()             ? CareState::ask
                : *load.span_by_sag < care::sag_usual ? CareState::near
                                                      : CareState::holds;
  check.words +=
      fmt::format(": {} sags {:.2f} mm at worst, {:.1f} MPa.", load.material->material,
                  *load.sag_worst_mm, *load.stress_worst_mpa);
  if (!load.unweighed.empty()) {
    check.words += fmt::format(" Never weighed: {}.", numbers_of(load.unweighed));
  }
  check.more = {fmt::format("{:g} GPa, {}, {}", load.material->stiffness_gpa,
                            load.material->source, load.material->status)};
  return check;
}

CareCheck mounts_check(const care::LoadPlan& plan) {
  CareCheck check{.what = "Mounts", .state = CareState::told};
  std::vector<std::string> unweighed;
  double grams = 0;
  for (const care::MountLoad& one : plan.mounts) {
    grams += one.mass_g.value_or(0);
    if (!one.mass_g) {
      unweighed.push_back(one.piece->number);
    }
  }
  check.words = fmt::format("{} hang on mounts, {:.2f} kg as far as weighed.",
                            pieces_of(plan.mounts.size()), grams / 1000);
  if (!unweighed.empty()) {
    check.state = CareState::ask;
    check.words += fmt::format(" Never weighed: {}.", numbers_of(unweighed));
  }
  return check;
}

// Pieces that may not be shown yet: nobody gave leave, or a rule that touches display holds
// them.
void add_withheld(std::vector<CareCheck>& checks,
                  const CareGround& ground,
                  const CaseContents& contents) {
  const care::Rights rights(ground.show);
  std::vector<std::string> no_leave;
  std::vector<std::string> held;
  for (const model::Placement* placement : contents.placed) {
    const model::Piece& piece = *ground.show.find(placement->piece);
    if (!rights.may(piece, model::Use::show)) {
      no_leave.push_back(piece.number);
    }
    for (const assay::Screened& one :
         screen_piece(ground.show, piece, ground.last, ground.opening)) {
      if (one.state == assay::State::hold) {
        held.push_back(piece.number);
        break;
      }
    }
  }
  checks.push_back({.what = "Leave",
                    .state = no_leave.empty() ? CareState::holds : CareState::held,
                    .words = no_leave.empty()
                                 ? "Every piece may be shown."
                                 : fmt::format("No leave to show {}. No answer means no.",
                                               numbers_of(no_leave))});
  if (!held.empty()) {
    checks.push_back(
        {.what = "Law",
         .state = CareState::held,
         .words = fmt::format("The law asks what {} is made of: see the Sheet of {}.",
                              held.size() == 1 ? "a piece" : "each piece", numbers_of(held))});
  }
}

}  // namespace

std::vector<CareCheck> case_checks(const CareGround& ground,
                                   const CaseContents& contents,
                                   const std::vector<PieceLight>& light) {
  const std::vector<CaseContents> only{contents};
  const std::vector<CaseClimate> plan = care::climate_plan(ground.show, only);
  const CaseClimate& climate = plan.front();
  std::vector<CareCheck> checks{case_light(ground, light), humidity(climate), warmth(climate),
                                keeping(climate, ground.wish.days)};
  add_silver(checks, climate);
  add_keep_outs(checks, climate);
  const care::LoadPlan loads = care::load_plan(ground.show, only);
  for (const care::ShelfLoad& one : loads.shelves) {
    checks.push_back(shelf_check(one));
  }
  if (!loads.mounts.empty()) {
    checks.push_back(mounts_check(loads));
  }
  add_withheld(checks, ground, contents);
  return checks;
}

}  // namespace backmark::desk
