// How large a picture of a piece is, and where on it the piece lies. Millimetres; the origin is
// the middle of the ornament, y down.
#pragma once

#include "draw/geometry.h"
#include "model/piece.h"
#include "scenario/work.h"

namespace backmark::scenario {

// Cords are drawn folded: so far above the ornament and below it.
inline constexpr double cord_above_mm = 24;
inline constexpr double cord_below_mm = 26;
// The loop of a pendant stands so far above the ornament.
inline constexpr double loop_above_mm = 7;

// The drawn outline of the ornament itself, without cord, loop or shadow.
draw::Box ornament_box(const Work& work);

// What a photograph of the view takes in.
draw::Box extent(const Work& work, model::View view);

// Pixels a millimetre: 12 (304.8 an inch) for fronts, backs and tips, 48 for marks.
double pixels_per_mm(model::View view);

}  // namespace backmark::scenario
