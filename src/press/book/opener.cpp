// The first page of a section: its title and introduction.
#include "base/text.h"
#include "press/book/entry_forms.h"
#include "press/book/type.h"
#include "press/type.h"

namespace backmark::press::book {

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
    std::vector<draw::Stretch> words{
        {words::with_curved_quotes(without_marks(part.section->introduction)),
         text_style(grid)}};
    open_with_small_caps(words);
    draw::RichText runs;
    for (draw::Stretch& stretch : words) {
      runs.push_back({std::move(stretch.text), stretch.style});
    }
    const double last =
        book.ragged(page, {left, grid.line(18)}, runs, width, grid.step, Role::text);
    if (last > grid.line(grid.lines + 1)) {
      book.find({Fault::conflict, "the introduction runs over its page", title,
                 "keep it to 150 words"});
    }
  }
}

}  // namespace backmark::press::book
