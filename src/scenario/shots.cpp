#include <cmath>

#include "base/text.h"
#include "scenario/extent.h"
#include "scenario/scenario.h"

namespace backmark::scenario {
namespace {

std::string_view view_word(model::View view) {
  switch (view) {
    case model::View::front:
      return "front";
    case model::View::back:
      return "back";
    case model::View::tips:
      return "tips";
    default:
      return "mark";
  }
}

Shot shot_of(const Work& work, std::size_t at, model::View view) {
  const draw::Box box = extent(work, view);
  const double scale = pixels_per_mm(view);
  return {.work = at,
          .view = view,
          .file = fmt::format("{}-{}.png", replace_all(work.number, " ", "-"), view_word(view)),
          .width_px = static_cast<int>(std::ceil(box.width * scale)),
          .height_px = static_cast<int>(std::ceil(box.height * scale)),
          .pixels_per_mm = scale};
}

}  // namespace

std::vector<Shot> shots(const Scenario& scenario) {
  std::vector<Shot> all;
  if (!scenario.drawn()) {
    return all;
  }
  for (std::size_t i = 0; i < scenario.works.size(); ++i) {
    const Work& work = scenario.works[i];
    all.push_back(shot_of(work, i, model::View::front));
    all.push_back(shot_of(work, i, model::View::back));
    if (work.worn_on_cord()) {
      all.push_back(shot_of(work, i, model::View::tips));
    }
    if (!work.mark.empty()) {
      all.push_back(shot_of(work, i, model::View::mark));
    }
  }
  return all;
}

}  // namespace backmark::scenario
