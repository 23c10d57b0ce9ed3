// The first page of a section: its title and introduction.
#include "base/text.h"
#include "press/book/entry_forms.h"
#include "press/book/entry_plates.h"
#include "press/book/plate.h"
#include "press/book/type.h"
#include "press/type.h"
#include "words/year_phrase.h"

namespace backmark::press::book {

namespace {

constexpr int firmly = 12;  // years that hold four chances in five

const model::YearBelief* years_of(const Layout& book, const Entry& entry) {
  const model::PieceBelief* belief = book.plan().job.beliefs.of(entry.piece().id);
  return belief == nullptr || !belief->dated || belief->year.empty() ? nullptr : &belief->year;
}

// The earliest piece that is firmly dated and can be shown at true size beside the title.
const Entry* earliest(const Layout& book, const EntryPart& part) {
  const Entry* first = nullptr;
  for (const Entry& entry : part.entries) {
    const auto* years = years_of(book, entry);
    if (years == nullptr || entry.front == nullptr ||
        years->at(0.9) - years->at(0.1) > firmly ||
        size_of(*entry.front, 1).width > book.grid().columns(3)) {
      continue;
    }
    if (first == nullptr || years->at(0.5) < years_of(book, *first)->at(0.5)) {
      first = &entry;
    }
  }
  return first;
}

// From the first piece's 10 point in 100 to the last one's 90; nothing if none is dated.
std::string years_text(const Layout& book, const EntryPart& part) {
  const model::YearBelief* first = nullptr;
  const model::YearBelief* last = nullptr;
  for (const Entry& entry : part.entries) {
    if (const auto* years = years_of(book, entry)) {
      first = first == nullptr || years->at(0.5) < first->at(0.5) ? years : first;
      last = last == nullptr || years->at(0.5) > last->at(0.5) ? years : last;
    }
  }
  return first == nullptr ? "" : words::year_range({first->at(0.1), last->at(0.9)});
}

// The front in the outer half of the recto, the back in that of the verso before it.
void add_piece(Layout& book, Page& page, const Entry& entry) {
  const Grid& grid = book.grid();
  const bool front = page.side == Side::recto;
  const double left = grid.column_left(page.side, front ? 4 : 1);
  const double top = grid.line(9) - 8 * grid.type;
  add_view(page, front ? entry.front : entry.back,
           {left + grid.columns(3) / 2, top + height_of(entry) / 2}, 1, entry,
           front ? "front" : "back");
  add_bar_and_words(
      book, page, left, left + grid.columns(3), 1, 20,
      fmt::format("{}, {}{}", entry.place->number, front ? "" : "back, ", ratio_words(1)));
}

// A page that would stay white before an opener shows the back of the opener's piece.
void add_verso(Layout& book, const Entry* piece) {
  if (piece == nullptr || piece->back == nullptr || book.next_side() != Side::verso) {
    return;
  }
  Page& page = book.page();
  page.folio = false;
  add_piece(book, page, *piece);
}

}  // namespace

void lay_opener(Layout& book, const EntryPart& part) {
  const Grid& grid = book.grid();
  const Entry* piece = earliest(book, part);
  add_verso(book, piece);
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
       balanced(book.plan().fonts(), title, head, grid.columns(3) + grid.gutter)) {
    book.text(page, {left - 0.6, y}, {{line, head}}, draw::Align::left, Role::title);
    y += 13 * grid.type;
  }
  book.text(page, {left, y - 3 * grid.type},
            {{years_text(book, part), italic(grid, 15).with(draw::copper)}});
  if (piece != nullptr) {
    add_piece(book, page, *piece);
  }
  if (part.section != nullptr) {
    const double width = grid.columns(3);
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
