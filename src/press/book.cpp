#include "press/book.h"

#include "press/book/kinds.h"
#include "press/book/render.h"

namespace backmark::press {

namespace {

constexpr int most_passes = 5;

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
  for (int pass = 0; pass < most_passes; ++pass) {
    layout.begin_pass();
    for (const book::Kind& kind : book::kinds()) {
      kind.lay(layout);
    }
    if (layout.settled()) {
      break;
    }
  }
  if (!layout.settled()) {
    layout.find({Fault::conflict, "page numbers still move after five passes", "the book",
                 "look at the contents and the index"});
  }
  auto pdf = book::render(layout);
  if (!pdf) {
    return pdf.problem();
  }
  Printed printed;
  printed.files = {{"book.pdf", std::move(*pdf)}};
  printed.findings = (*plan)->findings;
  printed.findings.insert(printed.findings.end(), layout.findings().begin(),
                          layout.findings().end());
  printed.facts = layout.facts();
  return printed;
}

}  // namespace backmark::press
