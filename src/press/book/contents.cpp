#include <algorithm>

#include "base/text.h"
#include "press/book/kinds.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

void add_item(Layout& book, Page& page, const Chapter& chapter, double y) {
  const Grid& grid = book.grid();
  const double column = grid.column_left(page.side, 2);
  const draw::Style words = roman(grid, 12.5);
  book.text(page, {column - 6 * grid.type, y}, {{std::to_string(chapter.page), words}},
            draw::Align::right, Role::table);
  const double width =
      book.text(page, {column, y}, {{chapter.title, words}}, draw::Align::left, Role::table);
  if (!chapter.note.empty()) {
    book.text(page, {column + width + 4 * grid.type, y},
              {{chapter.note, italic(grid, 11).with(draw::grey)}}, draw::Align::left,
              Role::table);
  }
  book.link(page, {column - 16, y - 4, grid.columns(5) + 16, 5.5}, chapter.place);
}

constexpr int first_item = 7;   // grid line
constexpr double least = 0.75;  // of the usual leading, to save a page

// Grid lines from an item to the next, and what a part's word takes with the white above it.
double item_lines(const Chapter& chapter) {
  return chapter.part.empty() ? 1.25 : 1.5;
}
double part_lines(const std::string& part) {
  return part.empty() ? 1 : 2.5;
}

// The share of the usual leading at which all items stand on one page, if there is any.
double leading_for(const Grid& grid, const std::vector<Chapter>& chapters) {
  double lines = 0;
  std::string part;
  for (const Chapter& chapter : chapters) {
    if (chapter.listed) {
      lines += (chapter.part == part ? 0 : part_lines(chapter.part)) + item_lines(chapter);
      part = chapter.part;
    }
  }
  const double share = (grid.lines - first_item) / std::max(1.0, lines);
  return share >= 1 || share < least ? 1 : share;
}

}  // namespace

void lay_contents(Layout& book) {
  const Grid& grid = book.grid();
  book.open(
      {.title = "Contents", .place = "contents", .starts = Starts::recto, .listed = false});
  Page* page = &book.page();
  book.text(*page, {grid.column_left(page->side, 2) - 0.6, grid.line(3)},
            {{"Contents", roman(grid, 30)}}, draw::Align::left, Role::title);
  double y = grid.line(first_item);
  const double step = grid.step * leading_for(grid, book.chapters());
  std::string part;
  for (const Chapter& chapter : book.chapters()) {
    if (!chapter.listed) {
      continue;
    }
    if (y > grid.line(grid.lines) + 0.1) {
      page = &book.page();
      y = grid.line(3);
    }
    if (chapter.part != part) {
      part = chapter.part;
      y += step;
      if (!part.empty()) {
        book.text(*page, {grid.column_left(page->side, 2), y},
                  {{for_small_caps(part), small_caps(grid, 12).with(draw::copper)}});
        y += (part_lines(part) - 1) * step;
      }
    }
    add_item(book, *page, chapter, y);
    y += item_lines(chapter) * step;
  }
}

}  // namespace backmark::press::book
