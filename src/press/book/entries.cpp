// Section by section: an opener, then a spread or a share of one for each piece.
#include "base/text.h"
#include "press/book/entry_cells.h"
#include "press/book/entry_forms.h"
#include "press/book/entry_plates.h"
#include "press/book/entry_text.h"
#include "press/book/kinds.h"
#include "press/book/plate.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

double add_run_in(Layout& book,
                  Page& page,
                  const Entry& entry,
                  const std::vector<FactKind>& kinds,
                  std::string_view between,
                  draw::Point at) {
  const Grid& grid = book.grid();
  for (const FactKind kind : kinds) {
    if (!entry.fact(kind).empty()) {
      book.fact(entry.piece(), kind, entry.fact(kind));
    }
  }
  const draw::RichText words = run_in(book, entry, kinds, between);
  return words.empty() ? at.y
                       : book.ragged(page, at, words, grid.columns(3) - 9 * grid.type,
                                     grid.small, Role::entry);
}

void add_group_caption(
    Layout& book, Page& page, const Entry& entry, draw::Point cell, bool front) {
  const Grid& grid = book.grid();
  const double in = 9 * grid.type;
  draw::Point at{cell.x + in, cell.y + 59.6 * grid.type};
  draw::Style number = caption(grid).with(draw::copper).sized(grid.pt(11));
  book.text(page, {cell.x, at.y}, {{std::to_string(entry.place->number), number}});
  if (!front) {
    add_run_in(book, page, entry, {FactKind::back, FactKind::marks}, ". ", at);
    return;
  }
  book.place(page, entry.name(), cell);
  book.fact(entry.piece(), FactKind::number, entry.fact(FactKind::number));
  const std::string& title = entry.fact(FactKind::title);
  book.fact(entry.piece(), FactKind::title, title);
  at.y = book.ragged(page, at, {{title, roman(grid, 12)}}, grid.columns(3) - in,
                     4.2 * grid.type, Role::entry);
  at.y = add_run_in(book, page, entry, {FactKind::maker, FactKind::made}, ", ", at);
  add_run_in(book, page, entry, {FactKind::materials, FactKind::size, FactKind::lender}, ". ",
             at);
}

}  // namespace

void lay_six(Layout& book, const Entry* first, std::size_t count) {
  const Grid& grid = book.grid();
  for (const bool front : {true, false}) {
    Page& page = book.page();
    (front ? page.outline : page.foot) =
        fmt::format("{}–{}", first->place->number, first[count - 1].place->number);
    page.outline_level = 2;
    for (std::size_t at = 0; at < count; ++at) {
      const draw::Point cell{half_left(grid, page.side, at),
                             grid.head + static_cast<double>(at / 2) * 75 * grid.type};
      const draw::Point centre{cell.x + grid.columns(3) / 2, cell.y + 26.2 * grid.type};
      add_view(page, front ? first[at].front : first[at].back, centre, 1, first[at],
               front ? "front" : "back");
      add_group_caption(book, page, first[at], cell, front);
    }
    if (front) {
      add_scale_bar(book, page, {grid.left(page.side), grid.line(grid.lines) + 3}, 20, 1);
      book.text(page, {grid.right(page.side), grid.line(grid.lines) + 3},
                {{std::string(each_faces), caption_italic(grid).with(draw::grey)}},
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
        lay_cells(book, first, slot.count);
      }
    }
  }
}

}  // namespace backmark::press::book
