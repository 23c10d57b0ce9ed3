#include "base/text.h"
#include "press/book/kinds.h"
#include "press/book/type.h"

namespace backmark::press::book {

// Caption type, 56 wide, its last line on the last baseline.
void lay_colophon(Layout& book) {
  const Plan& plan = book.plan();
  book.open({.title = "Colophon", .place = "colophon"});
  Page& page = book.page();
  page.folio = false;
  const std::vector<std::string> words{
      "Set in EB Garamond and Inter on a step of " + fmt::format("{:g}", book.grid().step) +
          "\u00A0mm, and fitted to its pages by Backmark.",
      fmt::format("Printed from version {} of the show on {}.", plan.show().position,
                  day_text(plan.job.day)),
      fmt::format("The years and makers were reckoned from seed {}. Whoever reckons again with "
                  "the same records and the same seed reads the same words.",
                  plan.job.beliefs.seed)};
  const Grid& grid = book.grid();
  double y = grid.line(grid.lines - 9);
  for (const std::string& one : words) {
    y = book.ragged(page, {grid.text_left(page.side), y}, {{one, caption(grid)}},
                    grid.columns(grid.side_column ? 2 : 3), grid.small) +
        1.25;
  }
}

}  // namespace backmark::press::book
