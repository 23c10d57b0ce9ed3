#include "press/book/mark_cell.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "press/book/linked.h"
#include "press/book/plate.h"
#include "press/book/type.h"
#include "words/year_phrase.h"

namespace backmark::press::book {

namespace {

constexpr std::array<double, 4> ratios{4, 3, 2, 1};

double ratio_of(const model::Photograph& photograph, MarkRoom room) {
  for (const double ratio : ratios) {
    const draw::Size size = size_of(photograph, ratio);
    if (size.width <= room.width + 0.1 && size.height <= room.height + 0.1) {
      return ratio;
    }
  }
  return 1;
}

bool is_drawn(const StruckMark& mark) {
  return mark.photograph != nullptr && mark.photograph->pixels_per_mm > 0;
}

// Of the tallest in a row; words alone take their two lines.
double picture_height(const StruckMark& mark, MarkRoom room) {
  return is_drawn(mark) ? size_of(*mark.photograph, ratio_of(*mark.photograph, room)).height
                        : 0;
}

// Beside others the legend may take two lines.
double words_height(const Grid& grid, MarkRoom room) {
  return (room.across > 1 ? 4 : 3) * grid.small + 2.6 * grid.type;
}

std::string in_outline(const std::string& outline) {
  if (outline.empty()) {
    return "";
  }
  const bool vowel = std::string_view("aeiou").find(outline.front()) != std::string_view::npos;
  return (vowel ? " in an " : " in a ") + outline;
}

// "M·O in a rectangle" over "1947–63, on 17 pieces".
void add_words(Layout& book, Page& page, const StruckMark& mark, draw::Point at, double width) {
  const Grid& grid = book.grid();
  Linked first(grid);
  first.add(for_small_caps(mark.legend), small_caps(grid, 9.2));
  first.add(in_outline(mark.outline));
  at.y = first.place(book, page, first.set(book, width), at);
  Linked second(grid);
  const draw::Style quiet = caption_italic(grid).with(draw::grey);
  second.add(mark.years ? words::year_range(*mark.years) + ", on " : "on ", quiet);
  if (mark.places.size() == 1) {
    second.add("no.\u00A0" + std::to_string(mark.places.front()->number), quiet,
               "piece " + mark.places.front()->piece->number);
  } else {
    second.add(fmt::format("{}\u00A0pieces", mark.places.size()), quiet);
  }
  second.place(book, page, second.set(book, width), at);
}

void add_cell(Layout& book,
              Page& page,
              const StruckMark& mark,
              draw::Point corner,
              double height,
              MarkRoom room) {
  const Grid& grid = book.grid();
  double words_at = corner.y + grid.small;
  if (is_drawn(mark)) {
    const double ratio = ratio_of(*mark.photograph, room);
    const draw::Size size = size_of(*mark.photograph, ratio);
    add_plate(page, mark.photograph,
              {corner.x + size.width / 2, corner.y + height - size.height / 2}, ratio,
              fmt::format("Mark {}, {}", mark.legend, ratio_words(ratio)));
    words_at += height;
  }
  add_words(book, page, mark, {corner.x, words_at}, room.width);
}

// The bar and the ratio, under the last row.
void add_scale(Layout& book,
               Page& page,
               const std::vector<StruckMark>& marks,
               draw::Point at,
               MarkRoom room) {
  const auto drawn = std::find_if(marks.begin(), marks.end(), is_drawn);
  if (drawn == marks.end()) {
    return;
  }
  const double ratio = ratio_of(*drawn->photograph, room);
  add_scale_bar(book, page, at, 5, ratio);
  const Grid& grid = book.grid();
  book.text(page, {at.x + scale_bar_width(book, 5, ratio) + 2, at.y},
            {{ratio_words(ratio), caption_italic(grid).with(draw::grey)}});
}

}  // namespace

MarkRoom mark_room(const Grid& grid) {
  if (grid.side_column) {
    return {grid.side_width(), 40, 1};
  }
  return {grid.columns(2), 30, 3};
}

double marks_height(const Layout& book, const std::vector<StruckMark>& marks, MarkRoom room) {
  double height = 0;
  const auto across = static_cast<std::size_t>(room.across);
  for (std::size_t at = 0; at < marks.size(); at += across) {
    double most = 0;
    for (std::size_t i = at; i < std::min(marks.size(), at + across); ++i) {
      most = std::max(most, picture_height(marks[i], room));
    }
    height += most + words_height(book.grid(), room);
  }
  return height;
}

void add_marks(Layout& book,
               Page& page,
               const std::vector<StruckMark>& marks,
               draw::Point at,
               MarkRoom room) {
  const Grid& grid = book.grid();
  const auto across = static_cast<std::size_t>(room.across);
  for (std::size_t row = 0; row < marks.size(); row += across) {
    const std::size_t end = std::min(marks.size(), row + across);
    double most = 0;
    for (std::size_t i = row; i < end; ++i) {
      most = std::max(most, picture_height(marks[i], room));
    }
    for (std::size_t i = row; i < end; ++i) {
      const double x = at.x + static_cast<double>(i - row) * (room.width + grid.gutter);
      add_cell(book, page, marks[i], {x, at.y}, most, room);
    }
    at.y += most + words_height(grid, room);
  }
  if (!marks.empty()) {
    add_scale(book, page, marks, {at.x, at.y - 0.2 * grid.small}, room);
  }
}

void lay_mark_plate(Layout& book,
                    Page& page,
                    const std::vector<StruckMark>& marks,
                    double top) {
  const Grid& grid = book.grid();
  const MarkRoom room{grid.columns(2), 40, 3};
  Page* on = &page;
  double y = top;
  for (std::size_t from = 0; from < marks.size();) {
    book.text(*on, {grid.left(on->side), y}, {{"Marks of no known maker", roman(grid, 19)}},
              draw::Align::left, Role::heading);
    y += grid.step;
    std::vector<StruckMark> here;
    while (from < marks.size()) {
      here.push_back(marks[from]);
      if (y + marks_height(book, here, room) > grid.line(grid.lines) && here.size() > 1) {
        here.pop_back();
        break;
      }
      ++from;
    }
    add_marks(book, *on, here, {grid.left(on->side), y}, room);
    if (from < marks.size()) {
      on = &book.page();
      y = grid.line(2);
    }
  }
}

}  // namespace backmark::press::book
