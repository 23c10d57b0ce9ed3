// Section by section: an opener, then a spread, a page or a place among six for each piece.
#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "press/book/entry_forms.h"
#include "press/book/entry_text.h"
#include "press/book/kinds.h"
#include "press/book/plate.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

constexpr double between = 8;  // mm from one cut-out to another
constexpr double clear = 6;    // mm from a cut-out to words or a chart

void add_alternative(Page& page,
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

void add_bar_and_words(Layout& book,
                       Page& page,
                       double left,
                       double right,
                       double ratio,
                       double bar,
                       const std::string& words) {
  const Grid& grid = book.grid();
  const double y = grid.line(grid.lines);
  add_scale_bar(book, page, {left, y}, bar, ratio);
  book.text(page, {right, y}, {{words, caption(grid)}}, draw::Align::right);
}

// The y on which pictures of the foot row stand.
double foot_floor(const Grid& grid) {
  return grid.line(grid.lines) - 8 * grid.type;
}

double tips_top(const Grid& grid, const Entry& entry) {
  return foot_floor(grid) - (entry.tips == nullptr ? 0 : size_of(*entry.tips, 1).height);
}

// Mark and tips on the foot of a spread's verso; the tips only below `free_from`.
void add_foot_row(Layout& book, Page& page, const Entry& entry, double free_from) {
  const Grid& grid = book.grid();
  const double floor = foot_floor(grid);
  if (entry.mark != nullptr && grid.side_column) {
    const double ratio = size_of(*entry.mark, 4).width <= grid.side_width() + 0.5 ? 4 : 3;
    const draw::Size size = size_of(*entry.mark, ratio);
    const double left = grid.side_left(page.side);
    add_alternative(page, entry.mark, {left + size.width / 2, floor - size.height / 2}, ratio,
                    entry, "mark");
    book.text(page, {left, grid.line(grid.lines)},
              {{ratio == 4 ? "Mark, four times" : "Mark, three times", caption(grid)}});
    add_scale_bar(book, page, {left + 30, grid.line(grid.lines)}, 5, ratio);
  }
  if (entry.tips != nullptr && tips_top(grid, entry) < free_from) {
    book.find({Fault::conflict, "there is no room for the tips under the prose",
               fmt::format("page {}, number {}", page.number, entry.place->number),
               "shorten the prose, or print in the larger trim"});
  } else if (entry.tips != nullptr) {
    const draw::Size size = size_of(*entry.tips, 1);
    const double left = grid.text_left(page.side);
    add_alternative(page, entry.tips, {left + size.width / 2, floor - size.height / 2}, 1,
                    entry, "tips");
    book.text(page, {left, grid.line(grid.lines)}, {{"Tips, true size", caption(grid)}});
    add_scale_bar(book, page, {left + 34, grid.line(grid.lines)}, 20, 1);
  }
}

// Front and back side by side at one scale, tops level; returns their ratio.
double add_pair(Page& page, const Entry& entry, draw::Box room) {
  const double half = (room.width - between) / 2;
  const double ratio = ratio_for({entry.front, entry.back}, {half, room.height});
  const double y = room.y + height_of(entry) * ratio / 2;
  if (entry.front != nullptr && entry.back != nullptr) {
    add_alternative(page, entry.front, {room.x + half / 2, y}, ratio, entry, "front");
    add_alternative(page, entry.back, {room.right() - half / 2, y}, ratio, entry, "back");
  } else {
    add_alternative(page, entry.front, {room.centre().x, y}, ratio, entry, "front");
    add_alternative(page, entry.back, {room.centre().x, y}, ratio, entry, "back");
  }
  return ratio;
}

void lay_spread(Layout& book, const Entry& entry) {
  const Grid& grid = book.grid();
  Page& verso = book.page();
  verso.outline = fmt::format("{} {}", entry.place->number, entry.fact(FactKind::title));
  verso.outline_level = 2;
  const double text_left = grid.text_left(verso.side);
  const auto lines = prose_lines(book, entry);
  int next = 2;
  if (grid.side_column) {
    add_entry_head(book, verso, entry, {grid.side_left(verso.side), grid.line(0)},
                   grid.side_width());
  } else {
    const double y =
        add_entry_head(book, verso, entry, {text_left, grid.line(0)}, grid.text_width());
    next = static_cast<int>((y - grid.head) / grid.step) + 2;
  }
  add_text_lines(book, verso, lines, text_left, next);
  // Three lines under the prose, or as many as the tips leave.
  const double prose_end = next + static_cast<double>(lines.size());
  const double above_tips = std::floor((tips_top(grid, entry) - clear - grid.head) / grid.step);
  const double band = grid.line(std::max(prose_end + 1, std::min(prose_end + 3, above_tips)));
  add_year_band(book, verso, entry, {text_left, band}, grid.text_width());
  add_foot_row(book, verso, entry, band + clear);
  Page& recto = book.page();
  recto.foot = std::to_string(entry.place->number);
  const draw::Box room{grid.left(recto.side), grid.head, grid.width(),
                       (grid.lines - 3) * grid.step};
  draw::Box centred = room;
  const double ratio =
      ratio_for({entry.front, entry.back}, {(room.width - between) / 2, room.height});
  centred.y += std::max(0.0, (room.height - height_of(entry) * ratio) * 0.42);
  centred.height -= centred.y - room.y;
  add_pair(recto, entry, centred);
  if (height_of(entry) > 0) {
    add_bar_and_words(
        book, recto, grid.left(recto.side), grid.right(recto.side), ratio, 50,
        fmt::format("{}, front and back, {}", entry.place->number, ratio_words(ratio)));
  }
}

// A piece in the upper or lower part of a page, from grid line `from` on. Returns the ratio of
// its pictures.
double lay_block(Layout& book, Page& page, const Entry& entry, int from) {
  const Grid& grid = book.grid();
  const double left = grid.text_left(page.side);
  double top = grid.line(from) + 2;
  if (grid.side_column) {
    add_entry_head(book, page, entry, {grid.side_left(page.side), grid.line(from)},
                   grid.side_width());
  } else {
    top = add_entry_head(book, page, entry, {left, grid.line(from)}, grid.text_width()) + 4;
  }
  const auto lines = prose_lines(book, entry);
  const double floor =
      grid.line(grid.lines - 3 - (lines.empty() ? 0 : static_cast<double>(lines.size()) + 1));
  const double ratio = add_pair(page, entry, {left, top, grid.text_width(), floor - top});
  const double height = height_of(entry) * ratio;
  int next = height > 0 ? static_cast<int>((top + height - grid.head) / grid.step) + 3
                        : static_cast<int>((top - grid.head) / grid.step) + 2;
  add_text_lines(book, page, lines, left, next);
  next += static_cast<int>(lines.size());
  if (next + 4 < grid.lines) {
    add_year_band(book, page, entry, {left, grid.line(next + 2)}, grid.text_width());
  }
  return ratio;
}

// One piece on a page, or two under each other.
void lay_page(Layout& book, const Entry* first, std::size_t count) {
  const Grid& grid = book.grid();
  Page& page = book.page();
  page.outline = count == 1
                     ? fmt::format("{} {}", first->place->number, first->fact(FactKind::title))
                     : fmt::format("{}–{}", first->place->number, first[1].place->number);
  page.outline_level = 2;
  const double left = grid.text_left(page.side);
  int from = 0;
  double ratio = 1;
  bool pictures = false;
  for (std::size_t at = 0; at < count; ++at) {
    ratio = lay_block(book, page, first[at], from);
    pictures = pictures || height_of(first[at]) > 0;
    from += block_lines(book, first[at]) + lines_between;
  }
  if (pictures) {
    add_bar_and_words(
        book, page, left, left + grid.text_width(), ratio, 20,
        (count == 1 ? "Front and back, " : "Fronts and backs, ") + ratio_words(ratio));
  }
}

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
      y = book.ragged(page, {cell.x + in, y}, {{entry.fact(kind), style}}, width, leading,
                      Role::entry);
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
      add_alternative(page, front ? first[at].front : first[at].back, centre, 1, first[at],
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

}  // namespace

void lay_entries(Layout& book) {
  for (const EntryPart& part : book.plan().parts) {
    lay_opener(book, part);
    for (const Entry& entry : part.entries) {
      if (entry.front == nullptr && entry.back == nullptr) {
        book.find({Fault::not_found, "an entry has no plate",
                   fmt::format("piece {}", entry.piece().number), "photograph it"});
      }
    }
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
