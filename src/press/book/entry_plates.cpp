#include "press/book/entry_plates.h"

#include <algorithm>

#include "base/text.h"
#include "press/book/plate.h"
#include "press/book/type.h"

namespace backmark::press::book {

using words::FactKind;

void add_corners(Layout& book, Page& page, draw::Point middle, draw::Size size) {
  const draw::Box box{middle.x - size.width / 2, middle.y - size.height / 2, size.width,
                      size.height};
  const double arm = std::min({5.0, size.width / 3, size.height / 3});
  page.drawings.push_back([box, arm](draw::Canvas& canvas) {
    for (const double x : {box.x, box.right()}) {
      for (const double y : {box.y, box.bottom()}) {
        const double in = x == box.x ? arm : -arm;
        const double down = y == box.y ? arm : -arm;
        canvas.line({x, y}, {x + in, y}, draw::grey, {0.35 * mm_per_point});
        canvas.line({x, y}, {x, y + down}, draw::grey, {0.35 * mm_per_point});
      }
    }
  });
  book.text(page, {middle.x, middle.y + 1.2},
            {{"not pictured", caption_italic(book.grid()).with(draw::grey)}},
            draw::Align::centre);
}

double height_of(const Entry& entry) {
  double height = entry.measured.height;
  for (const auto* one : {entry.front, entry.back}) {
    height = std::max(height, one == nullptr ? 0 : size_of(*one, 1).height);
  }
  return height;
}

void add_view(Page& page,
              const model::Photograph* photograph,
              draw::Point centre,
              double ratio,
              const Entry& entry,
              std::string_view view) {
  if (photograph != nullptr && photograph->pixels_per_mm > 0) {
    add_plate(page, photograph, centre, ratio,
              fmt::format("{}, {}", entry.fact(FactKind::title), view));
  }
}

double add_pair(Layout& book, Page& page, const Entry& entry, draw::Box room) {
  const draw::Point middle = room.centre();
  if (entry.front == nullptr && entry.back == nullptr) {
    if (entry.measured.height > 0) {
      add_corners(book, page, middle, entry.measured);
    }
    return 1;
  }
  const double half = (room.width - between_plates) / 2;
  const double ratio = ratio_for({entry.front, entry.back}, {half, room.height});
  if (entry.front != nullptr && entry.back != nullptr) {
    add_view(page, entry.front, {room.x + half / 2, middle.y}, ratio, entry, "front");
    add_view(page, entry.back, {room.right() - half / 2, middle.y}, ratio, entry, "back");
  } else {
    add_view(page, entry.front, middle, ratio, entry, "front");
    add_view(page, entry.back, middle, ratio, entry, "back");
  }
  return ratio;
}

void add_bar_and_words(Layout& book,
                       Page& page,
                       double left,
                       double right,
                       double ratio,
                       double bar_mm,
                       const std::string& words) {
  const Grid& grid = book.grid();
  const double y = grid.line(grid.lines);
  add_scale_bar(book, page, {left, y}, bar_mm, ratio);
  book.text(page, {right, y}, {{words, caption(grid)}}, draw::Align::right);
}

double foot_floor(const Grid& grid) {
  return grid.line(grid.lines) - 8 * grid.type;
}

void add_mark_at_foot(Layout& book, Page& page, const Entry& entry, draw::Box room) {
  const Grid& grid = book.grid();
  if (entry.mark == nullptr) {
    return;
  }
  for (const double ratio : {4.0, 3.0}) {
    const draw::Size size = size_of(*entry.mark, ratio);
    if (size.width > room.width + 0.5 || size.height > room.height) {
      continue;
    }
    add_view(page, entry.mark, {room.x + size.width / 2, foot_floor(grid) - size.height / 2},
             ratio, entry, "mark");
    const double y = grid.line(grid.lines);
    book.text(page, {room.x, y},
              {{ratio == 4 ? "Mark, four times" : "Mark, three times", caption(grid)}});
    add_scale_bar(book, page, {room.x + 30 * grid.type, y}, 5, ratio);
    return;
  }
}

}  // namespace backmark::press::book
