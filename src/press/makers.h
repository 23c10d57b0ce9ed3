// What the book says of its makers, as values: their years, which of its pieces are theirs by
// which words, the marks they struck, the papers that speak of them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "press/job.h"
#include "words/fact.h"

namespace backmark::press {

// Pieces of the book, in the order of their numbers.
using Places = std::vector<const words::Place*>;

// One legend in one outline, with where it was seen.
struct StruckMark {
  std::string legend;   // "M·O"; letters that were guessed are not told apart here
  std::string outline;  // "rectangle"; may be empty
  Places places;
  const model::Photograph* photograph = nullptr;  // the first of its pieces that has one
  std::optional<YearSpan> years;                  // as seen_in (press/chronology.h)
};

struct MakerPage {
  const model::Maker* maker = nullptr;
  bool tell_years = true;  // a living maker has the last word on what is told
  bool tell_prose = true;
  std::vector<double> at_work;    // for each year of the span; empty: not documented, not told
  std::vector<Year> middles;      // of the pieces that are the maker's at one in two or better
  Places named;                   // "Oda Vessen", "Oda Vessen or Annis Corrow"
  Places attributed;              // "attributed to", "workshop of", "circle of"
  Places possible;                // "possibly by"
  std::vector<StruckMark> marks;  // in the order of their years
  std::vector<std::string> documents;  // titles of papers and books that speak of the maker
};

struct UnrecordedHands {
  std::string place;  // as phrased; empty: nowhere in particular
  Places places;
};

struct BookMakers {
  std::vector<MakerPage> makers;   // those whom the book names, by inverted name
  std::vector<StruckMark> others;  // marks of no known maker
  std::vector<UnrecordedHands> unrecorded;
  Problems findings;  // living makers who were not asked
};

// Of a living maker only the name is told without leave to print, with leave what its terms
// name ("years", "text"), all if they name nothing. A mark is a maker's if its legend is the
// usual mark or of the maker's lineage of stamps; other engravings are inscriptions, no marks.
// A piece's picture of its mark is taken to show the first of them.
BookMakers makers_of(const PressJob& job, const words::Grammar& grammar, YearSpan span);

// "M·[O]" reads "M·O".
std::string without_brackets(std::string_view legend);

}  // namespace backmark::press
