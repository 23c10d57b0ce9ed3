// What the chronology chart shows, as values: how a fitting or a maker comes and goes, and the
// years of each piece. Nothing is smoothed: a band is as dark as the odds allow.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "press/job.h"

namespace backmark::press {

// The chance, for each year of `span`, that the thing was in use (or at work) in it.
struct FadeBand {
  std::string label;
  std::vector<double> p;
};

// In use from the first of these pieces to the last: P(the first was made by then) times P(the
// last was not made before then), the pieces' years taken as independent. Empty for no piece.
std::vector<double> in_use(const std::vector<const model::YearBelief*>& years, YearSpan span);

// The years outside of which the chance of use is under one in five: what "seen from .. to"
// says of marks and fittings. Nothing for no piece, or if no year reaches it.
std::optional<YearSpan> seen_in(const std::vector<const model::YearBelief*>& years,
                                YearSpan span);

// At work between two years, each with a normal error; an end that nobody documented is taken
// as still at work. Both unknown: empty.
std::vector<double> at_work(const model::Maker& maker, YearSpan span);

struct PieceYears {
  const words::Place* place = nullptr;
  std::vector<double> p;  // for each year of the span; between its 1.2 and 98.8 points
  Year low;               // the 10, 50 and 90 points in 100
  Year middle;
  Year high;
  std::optional<Year> inscribed;  // a year written on the piece
};

// The widest 80 % span of a piece that is charted, in years.
inline constexpr int widest_charted = 20;

struct Chronology {
  YearSpan span;
  std::vector<FadeBand> fittings;  // by their middle
  std::vector<FadeBand> makers;    // those who have a piece in the book, by their middle
  std::vector<PieceYears> pieces;  // of the book, by median
  int left_out = 0;                // pieces that no year can be said of within 20
};

Chronology chronology(const PressJob& job, const words::Numbering& numbering, YearSpan span);

}  // namespace backmark::press
