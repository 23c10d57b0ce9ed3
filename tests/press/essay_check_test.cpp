#include "press/essay_check.h"

#include <algorithm>

#include "base/text.h"
#include "demo_job.h"

using namespace backmark;
using namespace backmark::press;

namespace {

// The number of a piece whose four chances in five take five years or less.
const model::Piece& firm_piece() {
  const DemoPrinting& demo = demo_printing();
  for (const model::Piece& piece : demo.show.all<model::Piece>()) {
    const model::PieceBelief* belief = demo.beliefs.of(piece.id);
    if (belief->dated && belief->year.at(0.9).value - belief->year.at(0.1).value <= 5) {
      return piece;
    }
  }
  throw std::runtime_error("the demo has no firmly dated piece");
}

Problems check(std::vector<Span> words) {
  const Prose essay{.file = "1.md",
                    .blocks = {{.words = std::move(words), .where = "1.md, line 3"}}};
  return check_essay(demo_printing().job(words::Audience::public_), essay);
}

Span word(std::string text) {
  return {.text = std::move(text)};
}
Span piece(const model::Piece& of) {
  return {.kind = Span::Kind::piece, .text = "57", .key = of.number};
}

}  // namespace

TEST_CASE("an essay's year that the record of the piece does not bear is told with its line") {
  const model::Piece& firm = firm_piece();
  const Problems found =
      check({word("A word before. No. "), piece(firm), word(" was made in 1871. Backs lie.")});
  REQUIRE(found.size() == 1);
  CHECK(contains(found[0].what, "the prose says \"1871\""));
  CHECK(found[0].where == "1.md, line 3, of " + firm.number);
}

TEST_CASE("sentences of no piece, of several pieces and of what bears are left alone") {
  const DemoPrinting& demo = demo_printing();
  const model::Piece& firm = firm_piece();
  const model::Piece& other = demo.show.all<model::Piece>().back();
  const int middle = demo.beliefs.of(firm.id)->year.at(0.5).value;
  CHECK(check({word("It was made in 1871. See no. "), piece(firm), word(".")}).empty());
  CHECK(check({word("No. "), piece(firm), word(", unlike no. "), piece(other),
               word(", was made in 1871.")})
            .empty());
  CHECK(check({word("No. "), piece(firm), word(fmt::format(" was made about {}.", middle))})
            .empty());
}
