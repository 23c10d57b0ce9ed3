// Why this maker, why this year: the reckoning's reasons in two plain sentences.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/belief.h"
#include "model/show.h"

namespace backmark::words {

// "Four chances in five lie between 1950 and 1959, and nineteen in twenty with Maren Oskeld.
// The mark M·O carries most of both; against it stand the tips (spindle)."
//   - odds are the largest of 19 in 20, 9 in 10, 4 in 5, 3 in 4, 2 in 3, 1 in 2 that hold;
//   - where nothing pulls by itself, likeness to dated pieces is the reason;
//   - a hand that no mark, paper or accepted claim names is said to be known by manner alone;
//   - what people or papers say is named by its kind, without its words or whose they are.
// Empty if no year can be said, if the year or the maker is the curator's own phrase, or if the
// year is written on the piece and believed: then the record itself is the reason.
std::string why_phrase(const model::Show& show,
                       const model::PieceBelief& belief,
                       const model::Phrases& phrases,
                       const std::vector<model::EvidenceLine>& lines);

// A year written on the piece, where the reckoning believes it: it lies between the 10 and 90
// points.
std::optional<Year> written_year(const model::Show& show,
                                 model::Id<model::Piece> piece,
                                 const model::YearBelief& belief);

}  // namespace backmark::words
