#include "scenario/extent.h"

#include <algorithm>

namespace backmark::scenario {

draw::Box ornament_box(const Work& work) {
  return {-work.width / 2, -work.height / 2, work.width, work.height};
}

draw::Box extent(const Work& work, model::View view) {
  constexpr double margin = 1.5;
  if (view == model::View::mark) {
    return {-7, -4.5, 14, 9};
  }
  if (view == model::View::tips) {
    return {-13, -14, 26, work.tip_length + 17};
  }
  if (!work.worn_on_cord()) {
    draw::Box box = ornament_box(work).grown(margin);
    if (work.form == Form::pendant) {
      box.y -= loop_above_mm;
      box.height += loop_above_mm;
    }
    return box;
  }
  const double half = std::max(work.width / 2, 15.5) + margin;
  const double top = work.height / 2 + cord_above_mm + 4;
  const double bottom = work.height / 2 + cord_below_mm + work.tip_length + margin;
  return {-half, -top, 2 * half, top + bottom};
}

double pixels_per_mm(model::View view) {
  return view == model::View::mark ? 48 : 12;
}

}  // namespace backmark::scenario
