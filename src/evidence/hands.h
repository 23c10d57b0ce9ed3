// Hands by style: whether a piece is by anyone on the list, and if so, by whom.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "evidence/distance.h"
#include "evidence/lessons.h"
#include "evidence/likeness.h"
#include "evidence/style_table.h"
#include "evidence/watch.h"
#include "evidence/year_grid.h"

namespace backmark::evidence {

struct HandSettings {
  int listed_from = 5;  // pieces outside the asking piece's lot that put a maker on the list
  double date_smoothing = 10;  // years, sd, of the years of a maker's pieces
  double date_floor = 0.08;    // flat share in those years
  double lot_power = 0.7;
  double prior_d = 1, prior_open = 1;
  double ridge = 1;
  // Share of pieces by someone on the list; default: as among the signed pieces, each left out
  // with its lot.
  std::optional<double> listed_share;
  std::size_t fit_most = 3000;
};

struct HandChance {
  int maker = 0;
  double p = 0;  // if it is by someone on the list
};

struct HandJudgement {
  double listed = 0;                  // chance that the maker is on the list
  std::vector<HandChance> if_listed;  // most likely first; sums to 1 unless the list is empty
};

// q(m | x) ~ sum over the pieces i of m of K'_i, with K' as in Likeness but its own weights.
// All makers with fewer pieces than the list asks, and an open part, speak for "someone else".
// With years known (or believed) as p(t), every K'_i is multiplied by
//     sum_t p(t) Y'_i(t) * years of the axis,   Y' = stated span smoothed, with a flat floor.
// Works on axes of up to some thousand years.
class Hands {
 public:
  struct Question {
    const std::vector<StyleValue>* values = nullptr;
    std::optional<int> lot;  // pieces of this lot do not speak
    const std::vector<double>* years =
        nullptr;  // p(t), one a year of the axis; null: not known
  };
  HandJudgement judge(const Question& question) const;
  const Likeness& likeness() const { return likeness_; }
  // Pieces by each maker; those with enough are on the list.
  const std::map<int, int>& pieces() const { return pieces_; }
  double learned_share() const { return learned_share_; }
  HandLessons lessons() const;

 private:
  friend class HandFit;
  bool listed(int maker, std::optional<int> lot) const;
  // One a place of slots_: whether its maker is on the list without this lot.
  std::vector<char> listing(std::optional<int> lot) const;
  double timely(YearSpan stated, const std::vector<double>& cumulative) const;
  std::vector<double> smoothed(const std::vector<double>* years) const;

  HandSettings settings_;
  YearSpan axis_;
  DistancePool pool_;
  Likeness likeness_;
  std::vector<std::string> names_;  // of the characters
  std::vector<float> evidence_;
  std::vector<int> maker_, lot_;
  std::vector<int> slots_;         // the different makers, ascending
  std::vector<std::size_t> slot_;  // of each piece of the pool: place of its maker in slots_
  std::optional<Smoother> smoother_;
  std::vector<std::optional<YearSpan>> stated_;
  std::map<int, int> pieces_;
  std::map<std::pair<int, int>, int> pieces_in_lot_;  // (lot, maker)
  double learned_share_ = 0;
};

// Fits on the signed pieces of the table, the list formed anew for each lot that is left out.
// With lessons of the same characters nothing is learned (see fit_style).
// Problems: bad_input when no maker has a signed piece; refused when stopped.
Result<Hands> fit_hands(const StyleTable& table,
                        YearSpan axis,
                        const HandSettings& settings,
                        const Watch& watch,
                        const HandLessons* known = nullptr);

}  // namespace backmark::evidence
