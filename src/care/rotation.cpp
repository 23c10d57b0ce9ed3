#include "care/rotation.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "care/rights.h"

namespace backmark::care {

namespace {

using model::Id;
using model::Piece;
using model::Section;
using model::Show;

struct Reserve {
  const Piece* piece = nullptr;
  Id<Section> section;
  LightAllowance may;
  bool used = false;
};

std::vector<Reserve> reserves_of(const Show& show, const LightWish& wish) {
  std::set<Id<Piece>> taken;
  for (const model::Placement& one : show.all<model::Placement>()) {
    taken.insert(one.piece);
  }
  const Rights rights(show);
  const Requirements requirements(show);
  const PastLights past = past_lights(show, wish.opens);
  std::vector<Reserve> reserves;
  for (const model::Pick& pick : show.all<model::Pick>()) {
    const Piece* piece = show.find(pick.piece);
    if (taken.contains(pick.piece) || !rights.may(*piece, model::Use::show)) {
      continue;
    }
    const Sensitivity sensitivity = sensitivity_of(show, *piece, requirements);
    reserves.push_back({piece, pick.section,
                        allowance_of(show, *piece, sensitivity, {requirements, past, wish}),
                        false});
  }
  return reserves;
}

// A place over its allowance: whole days of the first piece, and what is left of the run.
struct Gap {
  const PieceLight* place = nullptr;
  Id<Section> section;
  int own_days = 0;
  int left = 0;
};

class Planner {
 public:
  Planner(const Show& show, const std::vector<PieceLight>& plan, const LightWish& wish)
      : run_(static_cast<int>(wish.days)), reserves_(reserves_of(show, wish)) {
    std::map<Id<Piece>, Id<Section>> sections;
    for (const model::Pick& pick : show.all<model::Pick>()) {
      sections[pick.piece] = pick.section;
    }
    for (const PieceLight& one : plan) {
      if (one.over_run()) {
        LightAllowance dose_only = one.may;  // a level that is too high is not mended by turns
        dose_only.level = {};
        const int own = days_at(dose_only, one);
        gaps_.push_back({&one, sections[one.piece->id], own, run_ - own});
      }
    }
    std::stable_sort(gaps_.begin(), gaps_.end(),
                     [](const Gap& a, const Gap& b) { return a.left > b.left; });
  }

  Rotation run() {
    Rotation made;
    for (const Gap& gap : gaps_) {
      made.at_least += fewest(gap);
    }
    for (const Gap& gap : gaps_) {
      made.turns.push_back(fill(gap));
      made.changes += static_cast<int>(made.turns.back().spells.size()) - (gap.own_days > 0);
    }
    std::stable_sort(made.turns.begin(), made.turns.end(), [](const Turn& a, const Turn& b) {
      return a.place < b.place;  // in the order of the plan
    });
    return made;
  }

 private:
  int days_at(const LightAllowance& may, const PieceLight& place) const {
    return static_cast<int>(
        days_within(may, *place.light.lux, *place.contents->in->hours_per_day, run_));
  }

  // With all reserves to itself: the longest lasting first.
  int fewest(const Gap& gap) const {
    std::vector<int> days;
    for (const Reserve& reserve : reserves_) {
      days.push_back(days_at(reserve.may, *gap.place));
    }
    std::sort(days.rbegin(), days.rend());
    int left = gap.left;
    int count = 0;
    for (const int one : days) {
      if (left <= 0 || one == 0) {
        break;
      }
      left -= one;
      ++count;
    }
    return count;
  }

  // The one that fills `left` days with least to spare; else the one that lasts longest; null:
  // nobody may stand here.
  Reserve* best(const Gap& gap, int left) {
    Reserve* found = nullptr;
    std::tuple<bool, bool, int> found_cost;
    for (Reserve& reserve : reserves_) {
      const int days = reserve.used ? 0 : days_at(reserve.may, *gap.place);
      if (days == 0) {
        continue;
      }
      const bool short_of = days < left;
      const std::tuple cost(short_of, reserve.section != gap.section, short_of ? -days : days);
      if (found == nullptr || cost < found_cost) {
        found = &reserve;
        found_cost = cost;
      }
    }
    return found;
  }

  Turn fill(const Gap& gap) {
    Turn turn{gap.place, {}, 0};
    if (gap.own_days > 0) {
      turn.spells.push_back({gap.place->piece, 0, gap.own_days});
    }
    int left = gap.left;
    while (left > 0) {
      Reserve* next = best(gap, left);
      if (next == nullptr) {
        break;
      }
      next->used = true;
      const int days = std::min(left, days_at(next->may, *gap.place));
      turn.spells.push_back({next->piece, run_ - left, days});
      left -= days;
    }
    turn.empty_days = left;
    return turn;
  }

  int run_;
  std::vector<Reserve> reserves_;
  std::vector<Gap> gaps_;
};

// The share at which a piece passes no limit; above 1 if it has room to spare.
double share_for(const PieceLight& one) {
  double share = 1e9;
  if (one.share_of_run && *one.share_of_run > 0) {
    share = 1 / *one.share_of_run;
  }
  if (one.may.level.value > 0 && one.light.lux->value > 0) {
    share = std::min(share, one.may.level.value / one.light.lux->value);
  }
  return share;
}

Dimmed dimmed(const std::vector<const PieceLight*>& pieces, double share, double run) {
  Dimmed step{.share = share, .lux_low = 1e9, .days = run};
  for (const PieceLight* one : pieces) {
    const Lux level = *one->light.lux * share;
    step.lux_low = std::min(step.lux_low, level.value);
    step.lux_high = std::max(step.lux_high, level.value);
    step.over_run += one->share_of_run && *one->share_of_run * share > 1 + 1e-9;
    step.over_level += one->may.level.value > 0 && level.value > one->may.level.value + 1e-9;
    LightAllowance dose_only = one->may;
    dose_only.level = {};
    step.days = std::min(step.days,
                         days_within(dose_only, level, *one->contents->in->hours_per_day, run));
  }
  return step;
}

}  // namespace

Rotation rotation(const Show& show,
                  const std::vector<PieceLight>& plan,
                  const LightWish& wish) {
  return Planner(show, plan, wish).run();
}

std::vector<CaseDimmer> dimmers(const std::vector<PieceLight>& plan, const LightWish& wish) {
  std::vector<CaseDimmer> all;
  for (std::size_t first = 0; first < plan.size();) {
    std::vector<const PieceLight*> pieces;
    std::size_t at = first;
    for (; at < plan.size() && plan[at].contents == plan[first].contents; ++at) {
      if (plan[at].dose) {
        pieces.push_back(&plan[at]);
      }
    }
    if (!pieces.empty()) {
      CaseDimmer one{plan[first].contents, {}, 1};
      for (const PieceLight* piece : pieces) {
        one.needed = std::min(one.needed, share_for(*piece));
      }
      // Lamps are set in whole percent; rounding down stays within.
      one.needed = std::floor(one.needed * 100 + 1e-9) / 100;
      std::set<double, std::greater<>> shares{1, 0.75, 0.5, 0.25};
      shares.insert(one.needed);
      for (const double share : shares) {
        one.steps.push_back(dimmed(pieces, share, std::floor(wish.days)));
      }
      all.push_back(std::move(one));
    }
    first = at;
  }
  return all;
}

}  // namespace backmark::care
