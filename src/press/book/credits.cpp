// Whose pictures stand in the book. A picture without a credit is a finding.
#include <algorithm>
#include <map>

#include "base/text.h"
#include "press/book/kinds.h"
#include "press/book/list_flow.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

// Numbers of the pieces by the credit of their pictures, in the order of the book.
std::map<std::string, std::vector<int>> numbers_by_credit(const Plan& plan) {
  std::map<std::string, std::vector<int>> numbers;
  for (const EntryPart& part : plan.parts) {
    for (const Entry& entry : part.entries) {
      for (const auto* photograph : {entry.front, entry.back, entry.tips, entry.mark}) {
        if (photograph == nullptr) {
          continue;
        }
        auto& of = numbers[photograph->credit];
        if (of.empty() || of.back() != entry.place->number) {
          of.push_back(entry.place->number);
        }
      }
    }
  }
  return numbers;
}

// "1-4, 7, 9-12"; both ends in full.
std::string in_runs(const std::vector<int>& numbers) {
  std::vector<std::string> runs;
  for (std::size_t from = 0; from < numbers.size();) {
    std::size_t to = from;
    while (to + 1 < numbers.size() && numbers[to + 1] == numbers[to] + 1) {
      ++to;
    }
    runs.push_back(from == to ? std::to_string(numbers[from])
                              : fmt::format("{}\u2013{}", numbers[from], numbers[to]));
    from = to + 1;
  }
  return join(runs, ", ");
}

// Pictures of no piece, by the numbers of their figures.
void add_figures(Layout& book, ListFlow& flow) {
  const Grid& grid = book.grid();
  for (const auto& [file, photograph] : book.plan().loose) {
    std::vector<int> figures;
    for (const Prose& essay : book.plan().essays) {
      for (const Block& block : essay.blocks) {
        if (std::any_of(block.pieces.begin(), block.pieces.end(),
                        [&name = file](const FigurePiece& one) { return one.file == name; })) {
          figures.push_back(block.number);
        }
      }
    }
    const std::string numbers =
        (figures.size() == 1 ? "fig.\u00A0" : "figs ") + in_runs(figures);
    if (photograph.credit.empty()) {
      book.find({Fault::conflict, "the picture of a figure has no credit",
                 fmt::format("{}, photograph {}", numbers, file),
                 "write it after the file: ![Caption](bench.jpg \"Ina Rell\")"});
    }
    const std::string credit =
        photograph.credit.empty() ? "Photographer not recorded" : photograph.credit;
    flow.paragraph({{credit + ": ", caption_italic(grid)}, {numbers, caption(grid)}}, 4);
    flow.space(grid.small / 3);
  }
}

}  // namespace

void lay_credits(Layout& book) {
  const Grid& grid = book.grid();
  Page& page = open_back_matter(book, {.title = "Credits", .place = "credits"},
                                "Pictures by the numbers of their pieces.");
  ListFlow flow(book, page, 2);
  for (const auto& [credit, numbers] : numbers_by_credit(book.plan())) {
    if (credit.empty()) {
      book.find({Fault::conflict,
                 fmt::format("pictures of {} pieces have no credit", numbers.size()),
                 "numbers " + in_runs(numbers), "say who made them, or that nobody asks"});
    }
    flow.paragraph(
        {{(credit.empty() ? "Photographer not recorded" : credit) + ": ", caption_italic(grid)},
         {in_runs(numbers), caption(grid)}},
        4);
    flow.space(grid.small / 3);
  }
  add_figures(book, flow);
}

}  // namespace backmark::press::book
