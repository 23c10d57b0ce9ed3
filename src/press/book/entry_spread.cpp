// A piece on a spread: words on the verso, the front on the recto. The back stands at the foot
// of the verso where it meets the front when the book is shut. Where the words leave no room
// for it, the reasons and the band move to the head of the recto, without a side column the
// facts too; where that does not help, the back stands beside the front.
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
  double lift = 0;    // of a small back and its front above the floor
};

// What finds room under `free_from`. A piece that would leave more white than it fills stands
// in the middle of it.
FootRow foot_row(const Grid& grid, const Entry& entry, double free_from) {
  const double right = grid.text_left(Side::verso) + grid.text_width();
  const draw::Size back = true_size(entry.back);
  const draw::Size tips = true_size(entry.tips);
  const double room = foot_floor(grid) - free_from;
  FootRow row;
  row.tips = tips.height > 0 && room >= tips.height;
  row.back = entry.front != nullptr && back.height > 0 && room >= back.height &&
             true_size(entry.front).height <= grid.line(last_line(grid)) - grid.head &&
             middle_of(grid, Side::verso) + back.width / 2 + between_plates +
                     (row.tips ? tips.width : 0) <=
                 right + 0.5;
  row.mark = !row.back && entry.mark != nullptr && room >= size_of(*entry.mark, 3).height;
  const double height = height_of(entry);
  row.lift = row.back && !row.tips && room > 2 * height ? (room - height) / 2 : 0;
  return row;
}

// The mark in the side column, or at the right of the text where there is none.
void add_mark(Layout& book, Page& page, const Entry& entry, double head) {
  const Grid& grid = book.grid();
  const double floor = foot_floor(grid);
  if (grid.side_column) {
    const double top = head + clear_of_words;
    add_mark_at_foot(book, page, entry,
                     {grid.side_left(page.side), top, grid.side_width(), floor - top});
  } else {
    const double width = size_of(*entry.mark, 3).width;
    const double left = grid.text_left(page.side) + grid.text_width() - width;
    add_mark_at_foot(book, page, entry, {left, grid.head, width, floor - grid.head});
  }
}

void add_foot_row(
    Layout& book, Page& page, const Entry& entry, const FootRow& row, double head) {
  const Grid& grid = book.grid();
  const bool mark = entry.mark != nullptr && (grid.side_column || row.mark);
  if (mark) {
    add_mark(book, page, entry, head);
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
             {middle_of(grid, page.side), floor - row.lift - height_of(entry) / 2}, 1, entry,
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

// How the words lie.
struct Words {
  bool opposite = false;  // reasons and band at the head of the recto
  bool beside = false;    // and the facts; the prose then stands beside the names
  FootRow row;
};

// The reasons and the band under text whose last line is `last`, if a page has room for both;
// else the band.
void add_reasons(
    Layout& book, Page& page, const Entry& entry, double left, int last, double width) {
  const Grid& grid = book.grid();
  const int lines = why_lines(book, entry, width);
  const bool room = lines > 0 && band_after(book, last, lines) < grid.lines;
  if (room) {
    add_why(book, page, entry, left, last, width);
  }
  const int band = std::min(band_after(book, last, room ? lines : 0), grid.lines - 1);
  add_year_band(book, page, entry, {left, grid.line(band)}, width);
}

// The y from which a page is free under such text.
double free_under(Layout& book, const Entry& entry, int last, double width) {
  const int band = band_after(book, last, why_lines(book, entry, width));
  return book.grid().line(std::min(band, book.grid().lines - 1)) + clear_of_words;
}

// Lines of prose beside the names.
int prose_beside(Layout& book, const Entry& entry) {
  int lines = 0;
  for (const auto& set : ragged_prose(book, entry, book.grid().columns(3))) {
    lines += static_cast<int>(set.size());
  }
  return lines;
}

int first_of_prose(Layout& book, const Entry& entry) {
  const Grid& grid = book.grid();
  return grid.side_column ? 2 : static_cast<int>(entry_size(book, entry).head / grid.step) + 2;
}

// The first of the ways that lets the back meet the front.
Words words_of(Layout& book, const Entry& entry) {
  const Grid& grid = book.grid();
  const int last = first_of_prose(book, entry) - 1 + entry_size(book, entry).prose;
  const Words usual{
      .row = foot_row(grid, entry, free_under(book, entry, last, grid.text_width()))};
  const double left_for_front = foot_floor(grid) - true_size(entry.front).height;
  if (usual.row.back) {
    return usual;
  }
  const Words opposite{.opposite = true,
                       .row = foot_row(grid, entry, grid.line(last) + clear_of_words)};
  if (opposite.row.back && left_for_front >= free_under(book, entry, 0, grid.text_width())) {
    return opposite;
  }
  const double verso = std::max(grid.head + names_height(book, entry),
                                grid.line(1 + prose_beside(book, entry)) + clear_of_words);
  const Words beside{.opposite = true, .beside = true, .row = foot_row(grid, entry, verso)};
  const double recto =
      std::max(grid.line(1) + facts_height(book, entry) + clear_of_words - grid.small,
               free_under(book, entry, 0, grid.columns(3)));
  return !grid.side_column && beside.row.back && left_for_front >= recto ? beside : usual;
}

// The words of the verso; returns the y under its side column.
double add_words(Layout& book, Page& page, const Entry& entry, const Words& words) {
  const Grid& grid = book.grid();
  if (words.beside) {
    const double head = add_entry_names(book, page, entry, {grid.left(page.side), grid.head});
    int line = 2;
    for (const auto& set : ragged_prose(book, entry, grid.columns(3))) {
      book.quality().add_ragged(set);
      add_text_lines(book, page, set, grid.column_left(page.side, 4), line);
      line += static_cast<int>(set.size());
    }
    return head;
  }
  const double head = add_entry_head(book, page, entry, 0);
  const auto lines = prose_lines(book, entry);
  const int first = first_of_prose(book, entry);
  const double left = grid.text_left(page.side);
  add_text_lines(book, page, lines, left, first);
  if (!words.opposite) {
    add_reasons(book, page, entry, left, first - 1 + static_cast<int>(lines.size()),
                grid.text_width());
  }
  return head;
}

// What moved to the head of the recto.
void add_opposite(Layout& book, Page& page, const Entry& entry, const Words& words) {
  const Grid& grid = book.grid();
  if (words.beside) {
    add_entry_facts(book, page, entry, {grid.left(page.side), grid.line(2)});
    add_reasons(book, page, entry, grid.column_left(page.side, 4), 0, grid.columns(3));
  } else if (words.opposite) {
    add_reasons(book, page, entry, grid.text_left(page.side), 0, grid.text_width());
  }
}

void add_recto(Layout& book, const Entry& entry, const Words& words) {
  const Grid& grid = book.grid();
  Page& page = book.page();
  page.foot = std::to_string(entry.place->number);
  add_opposite(book, page, entry, words);
  const FootRow& row = words.row;
  const draw::Box room{grid.left(page.side), grid.head, grid.width(),
                       foot_floor(grid) - grid.head};
  const double height = height_of(entry);
  const bool pictured = entry.front != nullptr || entry.back != nullptr;
  double ratio = 1;
  if (row.back) {
    add_view(page, entry.front,
             {middle_of(grid, page.side), room.bottom() - row.lift - height / 2}, 1, entry,
             "front");
  } else {
    ratio =
        ratio_for({entry.front, entry.back}, {(room.width - between_plates) / 2, room.height});
    // Where nothing is pictured the corners stand at eye height.
    const double top = pictured ? room.bottom() - height * ratio : grid.line(2);
    add_pair(book, page, entry, {room.x, top, room.width, height * ratio});
  }
  if (height > 0) {
    const std::string_view shown = row.back || entry.back == nullptr ? "front, "
                                   : entry.front == nullptr          ? "back, "
                                                                     : "front and back, ";
    add_bar_and_words(book, page, room.x, room.right(), ratio, 50,
                      fmt::format("{}, {}{}", entry.place->number, pictured ? shown : "",
                                  ratio_words(ratio)));
  }
}

}  // namespace

void lay_spread(Layout& book, const Entry& entry) {
  Page& verso = book.page();
  verso.outline = fmt::format("{} {}", entry.place->number, entry.fact(FactKind::title));
  verso.outline_level = 2;
  const Words words = words_of(book, entry);
  const double head = add_words(book, verso, entry, words);
  add_foot_row(book, verso, entry, words.row, head);
  add_recto(book, entry, words);
}

}  // namespace backmark::press::book
