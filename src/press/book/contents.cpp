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

}  // namespace

void lay_contents(Layout& book) {
  const Grid& grid = book.grid();
  book.open(
      {.title = "Contents", .place = "contents", .starts = Starts::recto, .listed = false});
  Page* page = &book.page();
  book.text(*page, {grid.column_left(page->side, 2) - 0.6, grid.line(3)},
            {{"Contents", roman(grid, 30)}}, draw::Align::left, Role::title);
  double y = grid.line(7);
  std::string part;
  for (const Chapter& chapter : book.chapters()) {
    if (!chapter.listed) {
      continue;
    }
    if (y > grid.line(grid.lines - 2)) {
      page = &book.page();
      y = grid.line(3);
    }
    if (chapter.part != part) {
      part = chapter.part;
      y += grid.step;
      if (!part.empty()) {
        book.text(*page, {grid.column_left(page->side, 2), y},
                  {{for_small_caps(part), small_caps(grid, 12).with(draw::copper)}});
        y += 1.5 * grid.step;
      }
    }
    add_item(book, *page, chapter, y);
    y += (part.empty() ? 1.25 : 1.5) * grid.step;
  }
}

}  // namespace backmark::press::book
