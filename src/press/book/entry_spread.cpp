// A piece on a spread: words on the verso, the front on the recto. The back stands at the foot
// of the verso where it meets the front when the book is shut, or beside it where the words
// leave no room.
#include <algorithm>

#include "base/text.h"
#include "press/book/entry_forms.h"
#include "press/book/entry_plates.h"
#include "press/book/entry_text.h"
#include "press/book/plate.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

draw::Size true_size(const model::Photograph* photograph) {
  return photograph == nullptr ? draw::Size{} : size_of(*photograph, 1);
}

// The middle of a recto's type area, from the spine; its mirror on the verso.
double middle_of(const Grid& grid, Side side) {
  const double from_spine = grid.inner + grid.width() / 2;
  return side == Side::recto ? from_spine : grid.trim.width - from_spine;
}

struct FootRow {
  bool back = false;
  bool tips = false;
  bool mark = false;  // beside the tips, where there is no side column
};

// What finds room under `free_from`.
FootRow foot_row(const Grid& grid, const Entry& entry, double free_from) {
  const double right = grid.text_left(Side::verso) + grid.text_width();
  const draw::Size back = true_size(entry.back);
  const draw::Size tips = true_size(entry.tips);
  const double floor = foot_floor(grid);
  FootRow row;
  row.tips = tips.height > 0 && floor - tips.height >= free_from;
  row.back = entry.front != nullptr && back.height > 0 && floor - back.height >= free_from &&
             true_size(entry.front).height <= grid.line(last_line(grid)) - grid.head &&
             middle_of(grid, Side::verso) + back.width / 2 + between_plates +
                     (row.tips ? tips.width : 0) <=
                 right + 0.5;
  row.mark =
      !row.back && entry.mark != nullptr && floor - size_of(*entry.mark, 3).height >= free_from;
  return row;
}

void add_foot_row(Layout& book, Page& page, const Entry& entry, const FootRow& row) {
  const Grid& grid = book.grid();
  const bool mark = entry.mark != nullptr && (grid.side_column || row.mark);
  if (mark) {
    add_mark_at_foot(book, page, entry);
  }
  if (entry.tips != nullptr && !row.tips) {
    book.find({Fault::conflict, "there is no room for the tips under the prose",
               fmt::format("page {}, number {}", page.number, entry.place->number),
               "shorten the prose, or print in the larger trim"});
  }
  if (!row.tips && !row.back) {
    return;
  }
  const double floor = foot_floor(grid);
  const double left = grid.text_left(page.side);
  const double right = left + grid.text_width();
  if (row.back) {
    add_view(page, entry.back,
             {middle_of(grid, page.side), floor - true_size(entry.back).height / 2}, 1, entry,
             "back");
  }
  if (row.tips) {
    const draw::Size size = true_size(entry.tips);
    const double x = row.back ? right - size.width / 2 : left + size.width / 2;
    add_view(page, entry.tips, {x, floor - size.height / 2}, 1, entry, "tips");
  }
  const std::string_view words = !row.back  ? "Tips, true size"
                                 : row.tips ? "Back and tips, true size"
                                            : "Back, true size";
  const double y = grid.line(grid.lines);
  book.text(page, {left, y}, {{std::string(words), caption(grid)}});
  const double bar =
      mark && !grid.side_column ? left + 28 * grid.type : right - scale_bar_width(book, 20, 1);
  add_scale_bar(book, page, {bar, y}, 20, 1);
}

// The words of the verso; returns the y from which it is free.
double add_words(Layout& book, Page& page, const Entry& entry) {
  const Grid& grid = book.grid();
  const double left = grid.text_left(page.side);
  const double head = add_entry_head(book, page, entry, 0);
  const auto lines = prose_lines(book, entry);
  const int first = grid.side_column ? 2 : static_cast<int>((head - grid.head) / grid.step) + 2;
  const int last = first - 1 + static_cast<int>(lines.size());
  const int why = entry_size(book, entry).why;
  const bool room = band_after(book, last, why) < grid.lines;
  add_text_lines(book, page, lines, left, first);
  if (why > 0 && room) {
    add_why(book, page, entry, last);
  }
  const int band = std::min(band_after(book, last, room ? why : 0), grid.lines - 1);
  add_year_band(book, page, entry, {left, grid.line(band)}, grid.text_width());
  return grid.line(band) + clear_of_words;
}

void add_recto(Layout& book, const Entry& entry, bool alone) {
  const Grid& grid = book.grid();
  Page& page = book.page();
  page.foot = std::to_string(entry.place->number);
  const draw::Box room{grid.left(page.side), grid.head, grid.width(),
                       foot_floor(grid) - grid.head};
  double ratio = 1;
  if (alone) {
    add_view(page, entry.front,
             {middle_of(grid, page.side), room.bottom() - true_size(entry.front).height / 2}, 1,
             entry, "front");
  } else {
    ratio =
        ratio_for({entry.front, entry.back}, {(room.width - between_plates) / 2, room.height});
    const double height = height_of(entry) * ratio;
    add_pair(book, page, entry, {room.x, room.bottom() - height, room.width, height});
  }
  if (height_of(entry) > 0) {
    add_bar_and_words(book, page, room.x, room.right(), ratio, 50,
                      fmt::format("{}, {}, {}", entry.place->number,
                                  alone || entry.back == nullptr ? "front"
                                  : entry.front == nullptr       ? "back"
                                                                 : "front and back",
                                  ratio_words(ratio)));
  }
}

}  // namespace

void lay_spread(Layout& book, const Entry& entry) {
  Page& verso = book.page();
  verso.outline = fmt::format("{} {}", entry.place->number, entry.fact(FactKind::title));
  verso.outline_level = 2;
  const FootRow row = foot_row(book.grid(), entry, add_words(book, verso, entry));
  add_foot_row(book, verso, entry, row);
  add_recto(book, entry, row.back);
}

}  // namespace backmark::press::book
