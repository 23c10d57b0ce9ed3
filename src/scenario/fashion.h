// What was usual on the coast in a year, and how a bench's own habits depart from it.
#pragma once

#include <array>
#include <vector>

#include "base/random.h"
#include "scenario/coast.h"
#include "scenario/vocabulary.h"

namespace backmark::scenario {

// One fashion: its best year, how many years it takes to fade, its height, and the first year
// in which it could be had at all.
struct Wave {
  double peak = 1955;
  double width = 15;
  double height = 1;
  int from = 0;
};

// Weight of each value of a vocabulary in a year: height × exp(-((year - peak) / width)² / 2)
// plus a hundredth of the height, and nothing before `from`.
using Fashion = std::vector<Wave>;
std::vector<double> weights(const Fashion& fashion, Year year);

// The characters that follow fashion and habit.
struct Fashions {
  Fashion motif, metal, stone, border, setting, backing, finish, solder, fitting, cord, colour,
      tip;
};
const Fashions& fashions();

// A bench's own way with one character: weights over its values.
using Habit = std::vector<double>;
struct Habits {
  Habit motif, metal, stone, border, setting, backing, finish, solder, fitting, cord, colour,
      tip;
  double size = 1;      // factor on lengths
  double gauge_mm = 1;  // usual thickness of the plate
  double tip_mm = 22;
};

// Habits formed of what was usual in the middle of the working span, each from a few draws.
Habits form_habits(Random& random, const MakerCard& card);

// A value of the vocabulary: with chance `own_share` by habit, else by fashion; never one that
// could not be had in that year. `habit` empty: by fashion.
std::size_t choose(Random& random, const Fashion& fashion, const Habit& habit, Year year);

inline constexpr double own_share = 0.55;

}  // namespace backmark::scenario
