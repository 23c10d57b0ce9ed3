#include "press/book.h"

#include "base/text.h"
#include "press/book/entry_forms.h"
#include "press/book/kinds.h"
#include "press/book/render.h"
#include "press/preflight.h"

namespace backmark::press {

namespace {

constexpr int most_passes = 5;

void lay_out(book::Layout& layout) {
  for (int pass = 0; pass < most_passes; ++pass) {
    layout.begin_pass();
    for (const book::Kind& kind : book::kinds()) {
      kind.lay(layout);
    }
    if (layout.settled()) {
      return;
    }
  }
  layout.find({Fault::conflict, "page numbers still move after five passes", "the book",
               "look at the contents and the index"});
}

// Pages that the last of the sheets would leave blank.
int blank_after(const book::Layout& layout, int sheet) {
  const int used = static_cast<int>(layout.pages().size());
  return (sheet - used % sheet) % sheet;
}

// Where more than two pages of the last signature would stay blank, pieces get spreads; if
// their words and lists then need a sheet more, they are given back.
void fit_signature(book::Layout& layout, int sheet) {
  const int used = static_cast<int>(layout.pages().size());
  const int blank = blank_after(layout, sheet);
  if (blank <= 2) {
    return;
  }
  book::raise_pieces(layout, blank);
  lay_out(layout);
  if (static_cast<int>(layout.pages().size()) > used + blank) {
    layout.raised().clear();
    lay_out(layout);
  }
}

// Blank pages fill the last signature. Up to two are usual; of more the finding says what may
// be done with them.
void fill_signature(book::Layout& layout, int sheet) {
  const int used = static_cast<int>(layout.pages().size());
  const int blank = blank_after(layout, sheet);
  for (int page = 0; page < blank; ++page) {
    layout.page().folio = false;
  }
  if (blank > 2) {
    layout.find(
        {Fault::conflict,
         fmt::format("{} pages leave {} of the last sheet of {} blank", used, blank, sheet),
         "the last signature",
         fmt::format(
             "pick more pieces for the book, drop {} of the pages, or set book.sheet to "
             "8 or 4",
             used % sheet)});
  }
}

// Pages of a signature: 16 unless the show says 4, 8 or 32.
int sheet_of(const PressJob& job) {
  const int sheet = static_cast<int>(job.number_setting("book.sheet", 16));
  return sheet == 4 || sheet == 8 || sheet == 32 ? sheet : 16;
}

}  // namespace

Result<Printed> print_book(const PressJob& job) {
  const auto plan = book::plan_book(job);
  if (!plan) {
    return plan.problem();
  }
  if ((*plan)->parts.empty()) {
    return Problem{Fault::refused, "nothing is picked for the book", "",
                   "pick pieces first: backmark pick SHOW NUMBER --book"};
  }
  book::Layout layout(**plan);
  lay_out(layout);
  fit_signature(layout, sheet_of(job));
  fill_signature(layout, sheet_of(job));
  auto pdf = book::render(layout);
  if (!pdf) {
    return pdf.problem();
  }
  Printed printed;
  printed.files = {{"book.pdf", std::move(*pdf)}};
  printed.findings = preflight(job.show, (*plan)->grammar.numbering());
  for (const Problems& more : {(*plan)->findings, judge_lines(layout.quality())}) {
    printed.findings.insert(printed.findings.end(), more.begin(), more.end());
  }
  printed.findings.insert(printed.findings.end(), layout.findings().begin(),
                          layout.findings().end());
  printed.facts = layout.facts();
  return printed;
}

}  // namespace backmark::press
