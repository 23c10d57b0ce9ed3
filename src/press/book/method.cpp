// What the reader must know to trust the words: how to read the book, and how its years and
// makers were reckoned.
#include <array>
#include <cmath>

#include "base/text.h"
#include "press/book/kinds.h"
#include "press/book/list_flow.h"
#include "press/book/type.h"
#include "words/fact.h"
#include "words/phrase.h"
#include "words/table.h"

namespace backmark::press::book {

namespace {

struct Said {
  std::string_view head;
  std::string_view words;
};

constexpr std::array<Said, 5> reading{
    {{"Size.",
      "Pieces are shown at their own size wherever a page can hold them. Where it cannot, the "
      "caption says the ratio. A bar on the page is measured in millimetres of the piece, so a "
      "ruler laid on it tells the truth of the print."},
     {"Front and back.",
      "The two stand at one scale. A back is shown as it is seen when the piece is turned "
      "about "
      "its upright axis; it is never mirrored to match the front. Where six pieces share a "
      "spread, each back lies on its front when the book is shut."},
     {"Years.",
      "A year is printed with its doubt in words. \u201c1954\u201d is claimed at nine chances "
      "in "
      "ten or better, \u201c1948\u201356\u201d at nine in ten within those years, \u201cabout "
      "1955\u201d at four in five within five years either way, \u201cprobably 1950s\u201d at "
      "three in five. The whole table stands in the note on method."},
     {"Makers.",
      "A name alone is claimed at nineteen in twenty, and only with a mark, a paper or an "
      "agreed attribution. \u201cAttributed to\u201d is more likely than not. Whoever is not "
      "named here may still have been known to somebody: write to us."},
     {"What is not printed.",
      "Owners who did not sign to be named, where pieces are kept, and what they are worth. "
      "Nothing is printed of a piece whose people asked that it be left out. Where there is no "
      "picture that may be printed, four corners hold the room that the piece takes."}}};

void rows(ListFlow& flow,
          const Grid& grid,
          const std::string& head,
          const std::vector<words::TableRow>& table) {
  flow.keep(4);
  flow.space(grid.small);
  flow.paragraph({{head, caption_italic(grid).with(draw::copper)}}, 0);
  for (const words::TableRow& row : table) {
    flow.paragraph(
        {{std::to_string(row.row) + "\u2002", figures(grid)},
         {row.phrase.empty() ? "nothing" : std::string(row.phrase), caption_italic(grid)},
         {fmt::format(": {}. Says: {}.", row.holds, row.says), caption(grid)}},
        4);
  }
}

// What the curator overruled, each with what the table would have said.
void overruled(ListFlow& flow, const Layout& book) {
  const Plan& plan = book.plan();
  const auto all = words::overruled(plan.show(), plan.job.beliefs);
  const Grid& grid = book.grid();
  flow.keep(3);
  flow.space(grid.small);
  flow.paragraph({{"Overruled by hand", caption_italic(grid).with(draw::copper)}}, 0);
  bool any = false;
  for (const words::Overruled& one : all) {
    const model::Piece* piece = plan.show().find(one.piece);
    const words::Place* place = plan.grammar.numbering().place_of(one.piece);
    if (piece == nullptr || place == nullptr || !place->pick->in_book) {
      continue;
    }
    any = true;
    flow.paragraph({{fmt::format("{}: {} (the table: {}). {}, {}", place->number, one.ours,
                                 one.tables, words::sentence(one.reason), one.initials),
                     caption(grid)}},
                   4);
  }
  if (!any) {
    flow.paragraph(
        {{"Nothing: every year and maker in this book is worded by the table.", caption(grid)}},
        0);
  }
}

constexpr std::array<std::string_view, 4> reckoning{
    {"Every piece is compared, character by character, with those whose year or maker is known "
     "from elsewhere: a year cut into the metal, a mark, an order book. How much each "
     "character "
     "counts is learned from the known pieces themselves, always with the lot that a piece "
     "came "
     "in left out, so that no piece is its own witness.",
     "What sources say is weighed by how often such sources prove right, and three tellings of "
     "one story count once. A part that can be changed, a cord or a tip, may be later than its "
     "piece; its evidence then speaks of the part alone.",
     "All of it is multiplied into one set of chances over years and makers. The printed words "
     "are chosen from those chances by the tables below and in no other way, save where the "
     "curator\u2019s own judgement is named as such.",
     "Chances are only as good as the records. They say how the evidence leans, not what "
     "happened; a single new paper may turn one of them over."}};

}  // namespace

void lay_how_to_read(Layout& book) {
  const Grid& grid = book.grid();
  book.open({.title = "How to read this book", .place = "how to read"});
  Page& page = book.page();
  const double left = grid.text_left(page.side);
  book.text(page, {left, grid.line(3)}, {{"How to read this book", roman(grid, 30)}},
            draw::Align::left, Role::title);
  double y = grid.line(9);
  for (const Said& one : reading) {
    y = book.ragged(page, {left, y},
                    {{std::string(one.head) + " ", italic(grid, 12).with(draw::copper)},
                     {std::string(one.words), text_style(grid)}},
                    grid.text_width(), grid.step, Role::text) +
        grid.step / 2;
    y = grid.line(std::ceil((y - grid.head) / grid.step - 0.01));
  }
}

void lay_method(Layout& book) {
  const Grid& grid = book.grid();
  Page& page = open_back_matter(book, {.title = "Note on method", .place = "method"},
                                "How the years and makers were reckoned, and what each wording "
                                "in this book claims.");
  ListFlow flow(book, page, 2);
  for (const std::string_view paragraph : reckoning) {
    flow.paragraph({{std::string(paragraph), caption(grid)}}, 0);
    flow.space(grid.small / 3);
  }
  rows(flow, grid, "Years, the first row that holds", words::year_table());
  rows(flow, grid, "Makers, the first row that holds", words::maker_table());
  rows(flow, grid, "Places", words::place_table());
  rows(flow, grid, "Parts that were replaced", words::replaced_table());
  overruled(flow, book);
}

}  // namespace backmark::press::book
