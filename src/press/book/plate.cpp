#include "press/book/plate.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.h"
#include "press/book/render.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

using draw::Box;
using draw::Canvas;

void draw_missing(Canvas& canvas, Layout& book, const Box& box) {
  canvas.rectangle(box);
  canvas.stroke(draw::copper,
                {0.35 * mm_per_point, draw::Cap::butt, draw::Join::miter, {1, 1}});
  draw::show(canvas, book.plan().fonts(), {box.centre().x, box.centre().y},
             draw::Run{"photograph missing", sans(book.grid(), 5.6).with(draw::copper)},
             draw::Align::centre);
}

}  // namespace

draw::Size size_of(const model::Photograph& photograph, double ratio) {
  if (photograph.pixels_per_mm <= 0) {
    return {};
  }
  return {photograph.width_px / photograph.pixels_per_mm * ratio,
          photograph.height_px / photograph.pixels_per_mm * ratio};
}

double ratio_for(const std::vector<const model::Photograph*>& photographs, draw::Size room) {
  constexpr std::array<double, 5> ratios{1, 3.0 / 4, 2.0 / 3, 1.0 / 2, 1.0 / 3};
  for (const double ratio : ratios) {
    const bool fit =
        std::all_of(photographs.begin(), photographs.end(), [&](const auto* photograph) {
          if (photograph == nullptr) {
            return true;
          }
          const draw::Size size = size_of(*photograph, ratio);
          return size.width <= room.width && size.height <= room.height;
        });
    if (fit) {
      return ratio;
    }
  }
  return 1.0 / 4;
}

std::string ratio_words(double ratio) {
  struct Words {
    double ratio;
    std::string_view words;
  };
  constexpr std::array<Words, 10> known{{{1, "true size"},
                                         {3.0 / 4, "three quarters of true size"},
                                         {2.0 / 3, "two thirds of true size"},
                                         {1.0 / 2, "half true size"},
                                         {1.0 / 3, "a third of true size"},
                                         {1.0 / 4, "a quarter of true size"},
                                         {2, "twice true size"},
                                         {3, "three times true size"},
                                         {4, "four times true size"},
                                         {6, "six times true size"}}};
  for (const Words& one : known) {
    if (std::abs(one.ratio - ratio) < 1e-6) {
      return std::string(one.words);
    }
  }
  return ratio < 1 ? fmt::format("1 : {:.1f}", 1 / ratio) : fmt::format("{:.1f} times", ratio);
}

Plate& add_plate(Page& page,
                 const model::Photograph* photograph,
                 draw::Point centre,
                 double ratio,
                 std::string alternative) {
  const draw::Size size = size_of(*photograph, ratio);
  Plate plate;
  plate.photograph = photograph;
  plate.box = {centre.x - size.width / 2, centre.y - size.height / 2, size.width, size.height};
  plate.ratio = ratio;
  plate.shadow = photograph->view != model::View::mark;
  plate.alternative = std::move(alternative);
  page.plates.push_back(std::move(plate));
  return page.plates.back();
}

double scale_bar_width(const Layout& book, double length_mm, double ratio) {
  return length_mm * ratio + 1.4 +
         book.plan().fonts().width(fmt::format("{:.0f} mm", length_mm), sans(book.grid(), 5.6));
}

void add_scale_bar(Layout& book, Page& page, draw::Point at, double length_mm, double ratio) {
  const double right = at.x + length_mm * ratio;
  page.drawings.push_back([at, length_mm, ratio, right](Canvas& canvas) {
    canvas.line(at, {right, at.y}, draw::ink, {0.5 * mm_per_point});
    for (double mm = 0; mm <= length_mm + 1e-9; mm += 10) {
      const bool end = mm == 0 || mm > length_mm - 1e-9;
      const double x = at.x + mm * ratio;
      canvas.line({x, at.y}, {x, at.y - (end ? 1.1 : 0.7)}, draw::ink,
                  {(end ? 0.5 : 0.35) * mm_per_point});
    }
    if (length_mm < 10) {
      canvas.line({right, at.y}, {right, at.y - 1.1}, draw::ink, {0.5 * mm_per_point});
    }
  });
  book.text(page, {right + 1.4, at.y},
            {{fmt::format("{:.0f}\u00A0mm", length_mm), sans(book.grid(), 5.6)}});
}

void draw_plate(Canvas& canvas, Layout& book, const Plate& plate, ReadyPlate ready) {
  for (Problem& finding : ready.findings) {
    book.find(std::move(finding));
  }
  if (!ready.inlay) {
    draw_missing(canvas, book, plate.box);
    return;
  }
  if (ready.shadow) {
    canvas.inlay(std::move(ready.shadow->inlay), ready.shadow->box);
  }
  canvas.inlay(*std::move(ready.inlay), plate.box);
}

}  // namespace backmark::press::book
