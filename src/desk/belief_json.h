// What was reckoned of a piece, as pages draw it.
#pragma once

#include <array>
#include <string>

#include "base/json_fwd.h"
#include "model/belief.h"
#include "model/show.h"

namespace backmark::desk {

// Years at the shares 0.1, 0.5 and 0.9; `q` at 0.025, 0.075 ... 0.975; `p` has one digit a year
// from the year `from`, 0 to 9 of the likeliest, between the shares 0.012 and 0.988.
struct DrawnYears {
  int p10 = 0;
  int p50 = 0;
  int p90 = 0;
  std::array<int, 20> q = {};
  int from = 0;
  std::string p;
};

// Of a belief that is not empty.
DrawnYears drawn_years(const model::YearBelief& year);

// The same as an object; null if no year can be said.
Json years_drawn(const model::YearBelief& year);

// [[name, chance] ...], most likely first, those of at least 1 in 200; the unrecorded hand,
// with the name null, is always the last.
Json makers_drawn(const model::Show& show, const model::MakerBelief& maker);

// {view, v, w_mm, h_mm} each: `v` changes with the picture; measures are 0 where the scale is
// not known.
Json pictures_drawn(const model::Show& show, model::Id<model::Piece> piece);

}  // namespace backmark::desk
