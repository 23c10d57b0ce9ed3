#include <algorithm>

#include "base/text.h"
#include "press/book/kinds.h"
#include "press/book/plate.h"
#include "press/book/type.h"
#include "press/type.h"

namespace backmark::press::book {

namespace {

constexpr double title_pt = 62;

// The largest lead piece with a front whose whole outline fits columns 4 to 6: it hangs beside
// the title, and the title points at it.
const Entry* piece_for_title(const Plan& plan) {
  const Entry* best = nullptr;
  double most = 0;
  for (const EntryPart& part : plan.parts) {
    for (const Entry& entry : part.entries) {
      if (entry.front == nullptr || !entry.place->pick->lead) {
        continue;
      }
      const draw::Size size = size_of(*entry.front, 1);
      if (size.width <= plan.grid.columns(3) && size.height > most &&
          size.height < 0.7 * plan.grid.trim.height) {
        most = size.height;
        best = &entry;
      }
    }
  }
  return best;
}

constexpr double clear = 6;  // mm between words and a cut-out

// Where the plate begins, so that the title's lines end before it.
double plate_left(const Grid& grid, Side side, const Entry* entry) {
  const double width = entry == nullptr ? 0 : size_of(*entry->front, 1).width;
  return grid.column_left(side, 4) + (grid.columns(3) - width) / 2;
}

void add_title_lines(Layout& book, Page& page, const Entry* beside) {
  const Plan& plan = book.plan();
  const Grid& grid = book.grid();
  const double left = grid.left(page.side);
  const draw::Style author = small_caps(grid, 12);
  book.text(page, {left, grid.line(3)},
            {{for_small_caps(plan.show().setting("author")), author.with(draw::grey)}});
  draw::Style title = roman(grid, title_pt);
  title.tracking = -4;
  const double room = std::min(grid.columns(4) + grid.gutter,
                               plate_left(grid, page.side, beside) - clear - left);
  const auto lines = balanced(plan.fonts(), plan.show().setting("title"), title, room);
  const double leading = grid.pt(title_pt) * mm_per_point * 1.02;
  int paragraph = book.new_paragraph();
  double y = 118 * grid.type - leading * static_cast<double>(lines.size() - 1);
  for (const std::string& line : lines) {
    // Hung so that the stem, not the serif, stands on the column.
    book.text(page, {left - 0.9 * grid.type, y}, {{line, title}}, draw::Align::left,
              Role::title);
    page.lines.back().paragraph = paragraph;
    y += leading;
  }
  y = 118 * grid.type + 3 * grid.step;
  paragraph = book.new_paragraph();
  for (const std::string& line : balanced(plan.fonts(), plan.show().setting("subtitle"),
                                          italic(grid, 17), grid.columns(3) + grid.gutter)) {
    book.text(page, {left, y}, {{line, italic(grid, 17)}});
    page.lines.back().paragraph = paragraph;
    y += 2 * grid.step;
  }
}

}  // namespace

void lay_title(Layout& book) {
  const Plan& plan = book.plan();
  const Grid& grid = book.grid();
  book.open({.title = std::string(plan.show().setting("title")),
             .place = "title",
             .starts = Starts::recto,
             .listed = false});
  Page& page = book.page();
  page.folio = false;
  const Entry* beside = piece_for_title(plan);
  add_title_lines(book, page, beside);
  const double left = grid.left(page.side);
  const double rule = grid.line(42) - 2 * grid.step;
  page.rules.push_back({{left, rule}, {left + grid.columns(1), rule}, 0.5, draw::copper});
  book.text(page, {left, grid.line(42)},
            {{std::string(plan.show().setting("house")), roman(grid, 12)}});
  if (beside != nullptr) {
    const double x = grid.column_left(page.side, 4) + grid.columns(3) / 2;
    add_plate(page, beside->front, {x, 118 * grid.type - 4}, 1,
              beside->fact(words::FactKind::title));
  }
}

}  // namespace backmark::press::book
