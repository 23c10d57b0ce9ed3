// When each variant of each character was in use and when makers worked, for charts: what the
// dated pieces and the stated windows tell, and nothing else. A year that was only reckoned
// teaches nothing here, since it came from these very uses.
//
// A variant is in use from a year s to a year e, as a maker is at work (spans.h), with the same
// belief over both ends. Its windows are what is documented of s and e; a piece whose part is
// recorded as replaced tells nothing. Per variant at most 200 dated pieces are weighed, spread
// evenly over those there are, on a grid of their years and 40 either way.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "evidence/gather.h"
#include "evidence/spans.h"
#include "model/show.h"
#include "model/use.h"

namespace backmark::evidence {

// A stretch of years with unsure ends.
struct Use {
  model::YearEnd start, end;
  YearSpan years;              // of `chance`
  std::vector<double> chance;  // that it was in use in the year: P(s <= t) - P(e < t)
};

// One variant, with the pieces that show it as places in Show::all<Piece>(), ascending.
struct UseRow {
  std::string value;  // a word, or "22 to 25 mm"
  std::vector<std::size_t> pieces;
  std::size_t known = 0;                   // of which the year is known by itself
  std::optional<Use> use;                  // none: no dated piece and no window
  std::vector<const model::Window*> told;  // look into the show
};

// The variants of a character or of one lineage.
struct UseGroup {
  model::Id<model::Character> character;  // none: the marks of a maker
  const model::Lineage* lineage =
      nullptr;                        // looks into the show; null: rows by likeliest start
  std::vector<std::size_t> recorded;  // pieces on which a row of it is seen, ascending
  std::size_t known = 0;
  std::vector<UseRow> rows;  // oldest first; numbers from small to large, in fifths
};

// Every character that is a word, a set of words or a number and is seen on any piece; first
// the lineages, then the others in the order of the show. Texts are left out, and so are words
// seen on one piece alone that stand in no lineage or window.
std::vector<UseGroup> uses(const model::Show& show, const Gathered& gathered);

// What is documented of a maker's years, as the reckoning begins with it.
SpanPrior span_prior(const model::Maker& maker);

struct MakerUse {
  model::Id<model::Maker> maker;
  Use use;
  std::size_t pieces = 0;  // that a mark, document or accepted claim gives to the maker
  std::size_t known = 0;   // of these, dated
};

// In the order of the show, without makers of whom neither years nor a dated piece are known.
std::vector<MakerUse> maker_uses(const model::Show& show, const Gathered& gathered);

}  // namespace backmark::evidence
