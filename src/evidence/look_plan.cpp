#include "evidence/look_plan.h"

#include <algorithm>
#include <map>
#include <optional>

#include "base/text.h"

namespace backmark::evidence {

namespace {

using model::LookList;
using model::LookStop;
using model::Show;

constexpr double overlap = 0.5;  // what a further look on one piece is worth of itself

double setting_or(const Show& show, std::string_view key, double otherwise) {
  const auto value = to_number(show.setting(key));
  return value && *value >= 0 ? *value : otherwise;
}

// A stop with its looks in order of worth; `done` of them are in the plan.
struct Place {
  LookStop stop;
  std::vector<std::size_t> looks;
  std::size_t done = 0;
  bool open = false;
};

// The next stretch of a place: so many looks, in minutes and bits.
struct Stretch {
  std::size_t count = 0;
  double minutes = 0;
  double bits = 0;
  double rate() const { return minutes > 0 ? bits / minutes : 0; }
};

class Planner {
 public:
  Planner(const Show& show, Visit by, const VisitMinutes& minutes, LookList& list)
      : minutes_(minutes), list_(list) {
    std::map<std::int32_t, std::size_t> known;
    for (std::size_t l = 0; l < list.looks.size(); ++l) {
      const model::Piece* piece = show.find(list.looks[l].piece);
      const bool tray = by == Visit::tray;
      const auto key =
          tray ? static_cast<std::int32_t>(piece->tray.value) : piece->lender.value;
      const auto [at, is_new] = known.try_emplace(key, places_.size());
      if (is_new) {
        Place place;
        place.stop.tray = tray ? piece->tray : model::Word{};
        place.stop.lender = tray ? model::Id<model::Lender>{} : piece->lender;
        place.stop.fetch_minutes = tray ? minutes.tray : minutes.lender;
        places_.push_back(std::move(place));
      }
      places_[at->second].looks.push_back(l);
    }
  }

  void run(double budget) {
    while (true) {
      std::optional<std::size_t> best;
      Stretch taken;
      for (std::size_t p = 0; p < places_.size(); ++p) {
        const Stretch stretch = next_of(places_[p], budget - spent_);
        if (stretch.count > 0 && stretch.rate() > taken.rate()) {
          best = p;
          taken = stretch;
        }
      }
      if (!best) {
        break;
      }
      take(places_[*best], taken);
    }
    find_missed(budget);
    finish();
  }

 private:
  // The best first stretch within `left` minutes; looks are passed over one by one only when
  // the place is open.
  Stretch next_of(const Place& place, double left) const {
    Stretch stretch{.minutes = place.open ? 0 : place.stop.fetch_minutes};
    Stretch best;
    std::map<std::int32_t, int> seen;
    for (std::size_t n = place.done; n < place.looks.size(); ++n) {
      const model::Look& look = list_.looks[place.looks[n]];
      const auto at = times_.find(look.piece.value);
      const int before = (at == times_.end() ? 0 : at->second) + seen[look.piece.value]++;
      stretch.count += 1;
      stretch.minutes += look.minutes + (before == 0 ? minutes_.piece : 0);
      double bits = look.gain_bits;
      for (int k = 0; k < before; ++k) {
        bits *= overlap;
      }
      stretch.bits += bits;
      if (stretch.minutes > left) {
        break;
      }
      if (stretch.rate() > best.rate()) {
        best = stretch;
      }
      if (place.open) {
        break;
      }
    }
    return best;
  }

  // The next look of each place, had the day been longer; most bits a minute first.
  void find_missed(double budget) {
    constexpr std::size_t most = 3;
    list_.missed.clear();
    for (const Place& place : places_) {
      if (place.done == place.looks.size()) {
        continue;
      }
      const model::Look& look = list_.looks[place.looks[place.done]];
      const double minutes = look.minutes + (place.open ? 0 : place.stop.fetch_minutes) +
                             (times_.contains(look.piece.value) ? 0 : minutes_.piece);
      list_.missed.push_back({place.looks[place.done], minutes, spent_ + minutes - budget});
    }
    std::stable_sort(list_.missed.begin(), list_.missed.end(),
                     [&](const auto& a, const auto& b) {
                       return list_.looks[a.look].gain_bits / a.minutes >
                              list_.looks[b.look].gain_bits / b.minutes;
                     });
    list_.missed.resize(std::min(list_.missed.size(), most));
  }

  void take(Place& place, const Stretch& stretch) {
    for (std::size_t n = 0; n < stretch.count; ++n) {
      const std::size_t l = place.looks[place.done++];
      times_[list_.looks[l].piece.value] += 1;
      place.stop.looks.push_back(l);
    }
    if (!place.open) {
      place.open = true;
      order_.push_back(static_cast<std::size_t>(&place - places_.data()));
    }
    place.stop.minutes += stretch.minutes;
    place.stop.gain_bits += stretch.bits;
    spent_ += stretch.minutes;
  }

  // Piece by piece, the pieces in the order of their best look.
  void finish() {
    for (const std::size_t p : order_) {
      LookStop& stop = places_[p].stop;
      std::map<std::int32_t, std::size_t> first;
      for (std::size_t n = 0; n < stop.looks.size(); ++n) {
        first.try_emplace(list_.looks[stop.looks[n]].piece.value, n);
      }
      std::stable_sort(stop.looks.begin(), stop.looks.end(), [&](std::size_t a, std::size_t b) {
        return first[list_.looks[a].piece.value] < first[list_.looks[b].piece.value];
      });
      list_.planned_bits += stop.gain_bits;
      list_.plan.push_back(std::move(stop));
    }
    list_.planned_minutes = spent_;
  }

  VisitMinutes minutes_;
  LookList& list_;
  std::vector<Place> places_;
  std::vector<std::size_t> order_;
  std::map<std::int32_t, int> times_;  // looks planned, a piece
  double spent_ = 0;
};

}  // namespace

VisitMinutes visit_minutes(const Show& show) {
  const VisitMinutes usual;
  return {setting_or(show, "look.tray_minutes", usual.tray),
          setting_or(show, "look.lender_minutes", usual.lender),
          setting_or(show, "look.piece_minutes", usual.piece)};
}

void plan_looks(
    const Show& show, double hours, Visit by, const VisitMinutes& minutes, LookList& list) {
  list.hours = hours;
  list.plan.clear();
  list.planned_bits = 0;
  Planner(show, by, minutes, list).run(hours * 60);
  list.notes.push_back(fmt::format(
      "Minutes: {:g} a {}, {:g} a piece, and each look its own; common practice, no source. A "
      "second look on one piece is taken at half its worth.",
      by == Visit::tray ? minutes.tray : minutes.lender, by == Visit::tray ? "tray" : "lender",
      minutes.piece));
}

}  // namespace backmark::evidence
