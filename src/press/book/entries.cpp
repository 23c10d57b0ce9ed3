// Section by section: an opener, then a spread, a page or a place among six for each piece.
#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "press/book/entry_text.h"
#include "press/book/kinds.h"
#include "press/book/plate.h"
#include "press/book/type.h"
#include "press/type.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

enum class Form { spread, page, six };

constexpr double between = 8;  // mm from one cut-out to another
constexpr double clear = 6;    // mm from a cut-out to words or a chart
constexpr std::size_t least_group = 4;

double pair_width(const Entry& entry) {
  double width = entry.back == nullptr || entry.front == nullptr ? 0 : between;
  for (const auto* one : {entry.front, entry.back}) {
    width += one == nullptr ? 0 : size_of(*one, 1).width;
  }
  return width;
}

double height_of(const Entry& entry) {
  double height = 0;
  for (const auto* one : {entry.front, entry.back}) {
    height = std::max(height, one == nullptr ? 0 : size_of(*one, 1).height);
  }
  return height;
}

bool is_small(const Grid& grid, const Entry& entry) {
  if (entry.place->pick->lead || entry.front == nullptr || entry.back == nullptr ||
      entry.fact(FactKind::prose).size() > 350) {
    return false;
  }
  return size_of(*entry.front, 1).width <= grid.columns(3) - 5 &&
         height_of(entry) <= 54 * grid.type;
}

bool wants_spread(const Grid& grid, const Entry& entry) {
  return entry.place->pick->lead || pair_width(entry) > grid.text_width() ||
         entry.fact(FactKind::prose).size() > 900;
}

// Forms of a part's entries. A spread and a group of six start on a verso, the part's first
// page after the opener is one: where a run of single pages between them is odd, its first
// piece gets a spread.
std::vector<Form> forms_of(const Grid& grid, const std::vector<Entry>& entries) {
  std::vector<Form> forms;
  for (std::size_t at = 0; at < entries.size();) {
    std::size_t end = at;
    while (end < entries.size() && is_small(grid, entries[end])) {
      ++end;
    }
    if (end - at >= least_group) {
      forms.resize(end, Form::six);
      at = end;
    } else {
      forms.push_back(wants_spread(grid, entries[at]) ? Form::spread : Form::page);
      ++at;
    }
  }
  for (std::size_t at = 0; at < forms.size();) {
    std::size_t end = at;
    while (end < forms.size() && forms[end] == Form::page) {
      ++end;
    }
    if ((end - at) % 2 == 1 && end < forms.size()) {
      forms[at] = Form::spread;
    }
    at = std::max(end, at + 1);
  }
  return forms;
}

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
    add_entry_head(book, verso, entry, grid.side_left(verso.side), grid.side_width());
  } else {
    const double y = add_entry_head(book, verso, entry, text_left, grid.text_width());
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
  add_bar_and_words(
      book, recto, grid.left(recto.side), grid.right(recto.side), ratio, 50,
      fmt::format("{}, front and back, {}", entry.place->number, ratio_words(ratio)));
}

void lay_single(Layout& book, const Entry& entry) {
  const Grid& grid = book.grid();
  Page& page = book.page();
  page.outline = fmt::format("{} {}", entry.place->number, entry.fact(FactKind::title));
  page.outline_level = 2;
  const double left = grid.text_left(page.side);
  double top = grid.line(0) + 2;
  if (grid.side_column) {
    add_entry_head(book, page, entry, grid.side_left(page.side), grid.side_width());
  } else {
    top = add_entry_head(book, page, entry, left, grid.text_width()) + 4;
  }
  const auto lines = prose_lines(book, entry);
  const double floor =
      grid.line(grid.lines - 3 - (lines.empty() ? 0 : static_cast<double>(lines.size()) + 1));
  const double ratio = add_pair(page, entry, {left, top, grid.text_width(), floor - top});
  const double bottom = top + height_of(entry) * ratio;
  const int first = static_cast<int>((bottom - grid.head) / grid.step) + 3;
  add_text_lines(book, page, lines, left, first);
  if (first + static_cast<int>(lines.size()) + 5 < grid.lines) {
    add_year_band(book, page, entry,
                  {left, grid.line(first + static_cast<double>(lines.size()) + 2)},
                  grid.text_width());
  }
  add_bar_and_words(book, page, left, left + grid.text_width(), ratio, 20,
                    "Front and back, " + ratio_words(ratio));
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

void lay_opener(Layout& book, const EntryPart& part) {
  const Grid& grid = book.grid();
  const std::string title =
      part.section == nullptr ? "Other pieces" : words::with_curved_quotes(part.section->title);
  book.open({.title = title,
             .place = "section " + (part.section == nullptr ? "" : part.section->key),
             .part = "The pieces",
             .note = fmt::format("{}–{}", part.entries.front().place->number,
                                 part.entries.back().place->number),
             .starts = Starts::recto});
  Page& page = book.page();
  page.folio = false;
  const double left = grid.left(page.side);
  double y = grid.line(9);
  draw::Style head = roman(grid, 34);
  head.tracking = -4;
  for (const std::string& line :
       balanced(book.plan().fonts(), title, head, grid.columns(4) + grid.gutter)) {
    book.text(page, {left - 0.6, y}, {{line, head}}, draw::Align::left, Role::title);
    y += 13 * grid.type;
  }
  if (part.section != nullptr) {
    const double width = std::min(87.0, grid.columns(4));
    const double last =
        book.ragged(page, {left, grid.line(18)},
                    {{words::with_curved_quotes(without_marks(part.section->introduction)),
                      text_style(grid)}},
                    width, grid.step, Role::text);
    if (last > grid.line(grid.lines + 1)) {
      book.find({Fault::conflict, "the introduction runs over its page", title,
                 "keep it to 150 words"});
    }
  }
}

}  // namespace

void lay_entries(Layout& book) {
  const Grid& grid = book.grid();
  for (const EntryPart& part : book.plan().parts) {
    lay_opener(book, part);
    const auto forms = forms_of(grid, part.entries);
    for (std::size_t at = 0; at < forms.size();) {
      const Entry& entry = part.entries[at];
      if (entry.front == nullptr && entry.back == nullptr) {
        book.find({Fault::not_found, "an entry has no plate",
                   fmt::format("piece {}", entry.piece().number), "photograph it"});
      }
      if (forms[at] == Form::six) {
        std::size_t end = at;
        while (end < forms.size() && forms[end] == Form::six && end - at < 6) {
          ++end;
        }
        lay_six(book, &entry, end - at);
        at = end;
      } else if (forms[at] == Form::spread) {
        lay_spread(book, entry);
        ++at;
      } else {
        lay_single(book, entry);
        ++at;
      }
    }
  }
}

}  // namespace backmark::press::book
