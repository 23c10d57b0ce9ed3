// What was reckoned of a piece, as pages draw it.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

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

// A picture of a piece: `v` changes with it; measures are 0 where the scale is not known, and
// then `shape` is width by height, if that is known.
struct DrawnPicture {
  std::string_view view;
  std::int32_t v = 0;
  double w_mm = 0;
  double h_mm = 0;
  double shape = 0;
};
DrawnPicture drawn_picture(const model::Photograph& photograph);

// {view, v, w_mm, h_mm} each, and shape where it is known.
Json pictures_drawn(const model::Show& show, model::Id<model::Piece> piece);

}  // namespace backmark::desk
