#include "press/outline.h"

#include <algorithm>

#include "draw/contour.h"
#include "press/type.h"

namespace backmark::press {
namespace {

using draw::Polygon;

// Enough for a pen line: a pixel of the traced picture is 0.17 mm of paper.
constexpr double traced_per_mm = 6;
constexpr double tolerance_mm = 0.06;
constexpr double smooth_mm = 0.5;       // smaller play of light is no edge to draw on
constexpr double least_detail_mm2 = 4;  // nor is a smaller patch

const draw::Stroke rim{0.5 * mm_per_pt, draw::Cap::round, draw::Join::round};
const draw::Stroke fine{0.25 * mm_per_pt, draw::Cap::round, draw::Join::round};
const draw::Colour rim_ink = draw::grey;
const draw::Colour fine_ink = draw::Colour::hex(0xB4B0AA);

void trace(draw::Canvas& canvas,
           const std::vector<Polygon>& lines,
           double cells_per_mm,
           double least_mm2) {
  for (const Polygon& line : lines) {
    if (draw::area_of(line) < least_mm2 * cells_per_mm * cells_per_mm) {
      continue;
    }
    const Polygon few = draw::simplified(line, tolerance_mm * cells_per_mm);
    if (few.empty()) {
      continue;
    }
    canvas.move_to({few[0].x / cells_per_mm, few[0].y / cells_per_mm});
    for (std::size_t i = 1; i < few.size(); ++i) {
      canvas.line_to({few[i].x / cells_per_mm, few[i].y / cells_per_mm});
    }
    canvas.close();
  }
}

}  // namespace

bool show_outline(draw::Canvas& canvas,
                  const PressJob& job,
                  const model::Photograph& photograph,
                  draw::Point centre,
                  draw::Size room,
                  double ratio,
                  Problems& findings) {
  auto picture = picture_of(job, photograph, findings);
  if (!picture || picture->empty()) {
    return false;
  }
  const bool true_scale = photograph.pixels_per_mm > 0;
  const double pixels_per_mm =
      true_scale ? photograph.pixels_per_mm / ratio
                 : std::max(picture->width / room.width, picture->height / room.height) / 0.8;
  const double width = picture->width / pixels_per_mm;
  const double height = picture->height / pixels_per_mm;
  if (pixels_per_mm > traced_per_mm) {
    *picture = draw::resized(*picture, std::max(1, static_cast<int>(width * traced_per_mm)),
                             std::max(1, static_cast<int>(height * traced_per_mm)));
  }
  const double cells_per_mm = picture->width / width;
  const draw::Field dark = draw::smoothed(draw::darkness_of(*picture),
                                          static_cast<int>(smooth_mm * cells_per_mm / 2 + 0.5));
  canvas.scoped([&] {
    canvas.translate(centre.x - width / 2, centre.y - height / 2);
    for (const double level : {0.36, 0.62}) {
      trace(canvas, draw::contours(dark, level), cells_per_mm, least_detail_mm2);
    }
    canvas.stroke(fine_ink, fine);
    trace(canvas, draw::contours(draw::opacity_of(*picture), 0.5), cells_per_mm, 0.2);
    canvas.stroke(rim_ink, rim);
  });
  return true_scale;
}

}  // namespace backmark::press
