// How a piece comes about at a bench, and what becomes of it afterwards.
#pragma once

#include "base/random.h"
#include "scenario/fashion.h"
#include "scenario/work.h"

namespace backmark::scenario {

// The outlines a motif may have, what it asks for, and its usual size in millimetres.
struct MotifRule {
  Outline outline = Outline::disc;
  double width = 42;
  double height = 42;
  int stones = 1;
  std::uint32_t techniques = 0;  // bit i: Technique i
  bool bordered = true;
};
const MotifRule& rule_of(Motif motif);

// A new piece of `maker` (-1: an unrecorded hand, `own` then is null) in a year: everything but
// number, lot and acquisition. Nothing on it is replaced yet.
Work make_work(Random& random, int maker, const Habits* own, Year year);

// The tips, cord and fitting again, as somebody would put them on in a later year.
void hang(Random& random, Work& work, const Habits* own, Year year);

// Time goes by: replaced cord, tips and fitting, lost letters, pendants made into slides. Sets
// `acquired` as well. Never later than `last_year`.
void age(Random& random, Work& work);

// The latest year anything in the scenario happens to a piece.
inline constexpr Year last_year{2004};

}  // namespace backmark::scenario
