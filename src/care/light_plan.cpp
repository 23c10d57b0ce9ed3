#include "care/light_plan.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "care/light_dose.h"

namespace backmark::care {

namespace {

using model::Requirement;
using model::Show;

constexpr double days_in_year = 365;

void take_lower(double& limit, std::string& from, double other, const std::string& who) {
  if (other > 0 && (limit == 0 || other < limit)) {
    limit = other;
    from = who;
  }
}

const reference::BlueWool* step_of(int step) {
  for (const reference::BlueWool& one : reference::blue_wool()) {
    if (one.step == step) {
      return &one;
    }
  }
  return nullptr;
}

void add_fade(PieceLight& one) {
  const reference::BlueWool* step = step_of(one.sensitivity.step);
  if (step == nullptr) {
    return;
  }
  one.fade_with_uv = !one.light.uv_uw_lm || one.over_uv();
  one.fade_mlxh = one.fade_with_uv ? step->mlxh_with_uv : step->mlxh_without_uv;
  if (one.dose) {
    one.share_of_fade = share_of_dose(*one.dose, one.fade_mlxh);
    one.share_with_past = share_of_dose(*one.dose + one.may.past, one.fade_mlxh);
  }
}

// A run's allowance may have been spent before it began: any light is then too much.
double share_of(LuxHours dose, const LightAllowance& may) {
  return may.run.value > 0 ? dose / may.run : dose.value > 0 ? 1e9 : 0;
}

void add_dose(PieceLight& one, const LightWish& wish) {
  const auto hours = one.contents->in->hours_per_day;
  if (!one.light.lux) {
    one.ask.push_back("the level: no reading, no fixture");
  }
  if (!hours) {
    one.ask.push_back("hours a day that the lights of the case are on");
  }
  if (!one.light.lux || !hours) {
    return;
  }
  one.dose = light_dose(*one.light.lux, *hours * wish.days);
  if (!one.may.run_from.empty()) {
    one.share_of_run = share_of(*one.dose, one.may);
  }
}

const Requirement* naming_class(const std::vector<const Requirement*>& asked) {
  const auto at = std::find_if(asked.begin(), asked.end(), [](const Requirement* one) {
    return !one->light_class.empty();
  });
  return at == asked.end() ? nullptr : *at;
}

}  // namespace

PastLights past_lights(const Show& show, model::DayNumber opens) {
  PastLights past;
  for (const model::Exposure& had : show.all<model::Exposure>()) {
    PastLight& one = past[had.piece];
    one.all = one.all + LuxHours{had.lux_hours};
    if (had.day == model::unknown_day || opens == model::unknown_day ||
        (had.day > opens - days_in_year && had.day <= opens)) {
      one.year = one.year + LuxHours{had.lux_hours};
    }
  }
  return past;
}

Sensitivity sensitivity_of(const Show& show,
                           const model::Piece& piece,
                           const Requirements& requirements) {
  return most_sensitive(show, piece, naming_class(requirements.of(piece)));
}

LightAllowance allowance_of(const Show& show,
                            const model::Piece& piece,
                            const Sensitivity& sensitivity,
                            const Asked& asked) {
  LightAllowance may;
  const auto* limit = reference::light_limit(asked.wish.rule, sensitivity.light_class);
  const std::string rule =
      fmt::format("{} {}", asked.wish.rule, reference::code_of(sensitivity.light_class));
  double year = 0;
  take_lower(may.level.value, may.level_from, limit->lux, rule);
  take_lower(year, may.run_from, limit->lxh_year, rule);
  for (const Requirement* one : asked.requirements.of(piece)) {
    take_lower(may.level.value, may.level_from, one->lux.value_or(0), asker_of(show, *one));
    take_lower(year, may.run_from, one->lux_hours_year.value_or(0), asker_of(show, *one));
  }
  if (const auto had = asked.past.find(piece.id); had != asked.past.end()) {
    may.past_year = had->second.year;
    may.past = had->second.all;
  }
  const double years = std::max(1.0, asked.wish.days / days_in_year);
  may.run = LuxHours{std::max(0.0, year * years - may.past_year.value)};
  return may;
}

double days_within(const LightAllowance& may, Lux level, double hours_per_day, double most) {
  if (may.level.value > 0 && level.value > may.level.value + 1e-9) {
    return 0;
  }
  const double day = level.value * hours_per_day;
  if (may.run_from.empty() || day <= 0) {
    return most;
  }
  // A whole day is a whole day although its dose was reckoned with a rounding.
  return std::min(most, std::floor(may.run.value / day + 1e-9));
}

std::vector<PieceLight> light_plan(const Show& show,
                                   const std::vector<CaseContents>& contents,
                                   const LightWish& wish) {
  const Requirements requirements(show);
  const PastLights past = past_lights(show, wish.opens);
  std::vector<PieceLight> plan;
  for (const CaseContents& one_case : contents) {
    for (const model::Placement* placement : one_case.placed) {
      PieceLight one;
      one.piece = show.find(placement->piece);
      one.contents = &one_case;
      one.placement = placement;
      one.sensitivity = sensitivity_of(show, *one.piece, requirements);
      one.light = light_at(one_case, *placement, wish.dim);
      one.may = allowance_of(show, *one.piece, one.sensitivity, {requirements, past, wish});
      add_dose(one, wish);
      add_fade(one);
      plan.push_back(std::move(one));
    }
  }
  return plan;
}

}  // namespace backmark::care
