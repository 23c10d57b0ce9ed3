// Claims, events and marks as statements with a reliability.
#pragma once

#include "evidence/gather.h"

namespace backmark::evidence {

// Fills years and makers of `into` from what is said of `piece`.
void gather_said(const model::Show& show,
                 const model::Piece& piece,
                 Year today,
                 GatheredPiece& into);

// How far a source is to be believed: its own figure, the weight of the claim, or what is usual
// for its kind (common practice, no source).
double reliability_of(const model::Show& show,
                      model::Id<model::Source> source,
                      std::optional<double> weight);

// The first teller: the source that `source` had it from, followed back to its origin.
std::string origin_of(const model::Show& show, model::Id<model::Source> source);

}  // namespace backmark::evidence
