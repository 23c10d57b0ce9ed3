// Section by section: an opener, then a spread, a page or a place among six for each piece.

#include "base/text.h"
#include "press/book/entry_forms.h"
#include "press/book/entry_plates.h"
#include "press/book/entry_text.h"
#include "press/book/kinds.h"
#include "press/book/plate.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

struct Cell {
  double x;
  double y;
};

Cell cell_of(const Grid& grid, Side side, std::size_t at) {
  std::size_t column = at % 2;
  if (side == Side::recto) {
    column = 1 - column;  // shut the book and each back meets its front
  }
  return {grid.column_left(side, column == 0 ? 1 : 4),
          grid.head + static_cast<double>(at / 2) * 75 * grid.type};
}

void add_group_caption(Layout& book, Page& page, const Entry& entry, Cell cell, bool front) {
  const Grid& grid = book.grid();
  const double in = 9 * grid.type;
  const double width = grid.columns(3) - in;
  double y = cell.y + 59.6 * grid.type;
  draw::Style number = caption(grid).with(draw::copper).sized(grid.pt(11));
  book.text(page, {cell.x, y}, {{std::to_string(entry.place->number), number}});
  const auto add = [&](FactKind kind, const draw::Style& style, double leading) {
    if (!entry.fact(kind).empty()) {
      book.fact(entry.piece(), kind, entry.fact(kind));
      y = book.ragged(page, {cell.x + in, y}, fact_words(book, entry, kind, style), width,
                      leading, Role::entry);
    }
  };
  if (front) {
    book.place(page, entry.name(), {cell.x, cell.y});
    add(FactKind::title, roman(grid, 12), 4.2 * grid.type);
    add(FactKind::maker, caption(grid), grid.small);
    add(FactKind::made, caption(grid), grid.small);
  } else {
    add(FactKind::back, caption(grid), grid.small);
    add(FactKind::marks, caption(grid), grid.small);
    add(FactKind::materials, caption(grid), grid.small);
  }
}

}  // namespace

void lay_six(Layout& book, const Entry* first, std::size_t count) {
  const Grid& grid = book.grid();
  for (const bool front : {true, false}) {
    Page& page = book.page();
    if (front) {
      page.outline = fmt::format("{}–{}", first->place->number, first[count - 1].place->number);
      page.outline_level = 2;
    } else {
      page.foot = fmt::format("{}–{}", first->place->number, first[count - 1].place->number);
    }
    for (std::size_t at = 0; at < count; ++at) {
      const Cell cell = cell_of(grid, page.side, at);
      const draw::Point centre{cell.x + grid.columns(3) / 2, cell.y + 26.2 * grid.type};
      add_view(page, front ? first[at].front : first[at].back, centre, 1, first[at],
               front ? "front" : "back");
      add_group_caption(book, page, first[at], cell, front);
    }
    if (front) {
      add_scale_bar(book, page, {grid.left(page.side), grid.line(grid.lines) + 3}, 20, 1);
      book.text(page, {grid.right(page.side), grid.line(grid.lines) + 3},
                {{"all at true size; each back faces its front",
                  caption_italic(grid).with(draw::grey)}},
                draw::Align::right);
    }
  }
}

void lay_entries(Layout& book) {
  for (const EntryPart& part : book.plan().parts) {
    lay_opener(book, part);
    for (const Slot& slot : slots_of(book, part.entries)) {
      const Entry* first = &part.entries[slot.first];
      if (slot.form == Form::six) {
        lay_six(book, first, slot.count);
      } else if (slot.form == Form::spread) {
        lay_spread(book, *first);
      } else {
        lay_page(book, first, slot.count);
      }
    }
  }
}

}  // namespace backmark::press::book
