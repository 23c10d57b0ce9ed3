// One piece on a page, or two under each other.
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

// Head, plate and words from grid line `from` on, as they were fitted. Returns the ratio of the
// pictures.
double lay_block(Layout& book, Page& page, const Entry& entry, int from, const BlockFit& fit) {
  const Grid& grid = book.grid();
  const double head = add_entry_head(book, page, entry, from);
  const double top = grid.side_column ? grid.line(from) : head;
  const double left = grid.side_column ? grid.text_left(page.side) : grid.left(page.side);
  const double width = plates_width(grid);
  const double ratio =
      add_pair(book, page, entry, {left, top, width, grid.line(fit.text - 2) + 1 - top});
  const auto lines = prose_lines(book, entry);
  add_text_lines(book, page, lines, grid.text_left(page.side), fit.text);
  const int last = fit.text - 1 + static_cast<int>(lines.size());
  if (fit.why > 0) {
    add_why(book, page, entry, last);
  }
  add_year_band(book, page, entry,
                {grid.text_left(page.side), grid.line(band_after(book, last, fit.why))},
                grid.text_width());
  return ratio;
}

std::string scale_words(const Entry* first, std::size_t count, double ratio) {
  const bool both = std::all_of(first, first + count, [](const Entry& entry) {
    return entry.front != nullptr && entry.back != nullptr;
  });
  const std::string_view what =
      both ? count == 1 ? "Front and back, " : "Fronts and backs, " : "";
  const std::string words = fmt::format("{}{}", what, ratio_words(ratio));
  return what.empty() ? words::sentence(words) : words;
}

}  // namespace

void lay_page(Layout& book, const Entry* first, std::size_t count) {
  const Grid& grid = book.grid();
  Page& page = book.page();
  page.outline = count == 1
                     ? fmt::format("{} {}", first->place->number, first->fact(FactKind::title))
                     : fmt::format("{}–{}", first->place->number, first[1].place->number);
  page.outline_level = 2;
  const int until = last_line(grid);
  int reasons = 0;  // lines that all blocks take with their reasons
  for (std::size_t at = 0; at < count; ++at) {
    reasons += block_lines(book, first[at], entry_size(book, first[at]).why) + lines_between;
  }
  const bool all_reasons = reasons - lines_between <= until;
  int from = 0;
  double ratio = 1;
  bool shown = false;
  for (std::size_t at = 0; at < count; ++at) {
    const Entry& entry = first[at];
    const int lines = block_lines(book, entry, all_reasons ? entry_size(book, entry).why : 0);
    const BlockFit fit = count == 1 ? fit_block(book, entry, 0, until, plate_field(grid))
                                    : fit_block(book, entry, from, from + lines, 0);
    ratio = lay_block(book, page, entry, from, fit);
    shown = shown || height_of(entry) > 0;
    from += lines + lines_between;
  }
  if (count == 1 && grid.side_column) {
    add_mark_at_foot(book, page, *first);
  }
  if (shown) {
    const double left = grid.text_left(page.side);
    add_bar_and_words(book, page, left, left + grid.text_width(), ratio, 20,
                      scale_words(first, count, ratio));
  }
}

}  // namespace backmark::press::book
