#include "care/rights.h"

#include <doctest/doctest.h>

#include "small_show.h"

using namespace backmark;
using namespace backmark::care;
using model::Leave;
using model::Use;

namespace {

void answered(SmallShow& small, std::int32_t subject, Use use, Leave leave, int day = 100) {
  small.add(model::Permission{.subject = subject, .use = use, .leave = leave, .day = day});
}

}  // namespace

TEST_CASE("no answer means no, asked means no, and only given means yes") {
  SmallShow small;
  const auto unasked = small.add_piece("A 1", "silver");
  const auto asked = small.add_piece("A 2", "silver");
  const auto given = small.add_piece("A 3", "silver");
  answered(small, asked.value, Use::print, Leave::asked);
  answered(small, given.value, Use::print, Leave::given);
  const model::Show& show = small.settled();
  const Rights rights(show);
  CHECK_FALSE(rights.may(*show.find(unasked), Use::print));
  CHECK_FALSE(rights.may(*show.find(asked), Use::print));
  CHECK(rights.may(*show.find(given), Use::print));
  CHECK_FALSE(rights.may(*show.find(given), Use::web));  // of one use only
  CHECK(rights.may(*show.find(unasked), Use::examine));  // nobody's culture is touched
  CHECK_FALSE(rights.withheld(*show.find(unasked)));
}

TEST_CASE("the latest answer stands") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "silver");
  answered(small, piece.value, Use::print, Leave::refused, 300);
  answered(small, piece.value, Use::print, Leave::given, 200);
  const model::Show& show = small.settled();
  CHECK_FALSE(Rights(show).may(*show.find(piece), Use::print));
}

// Duty of care for cultural items, 43 CFR 10, in force since 12 January 2024: the table of
// restrictions.
TEST_CASE("human hair gates a piece until its community has answered") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "human hair");
  const auto picture = small.add(model::Photograph{.piece = piece, .file = "a.png"});
  const model::Show& before = small.settled();
  {
    const Rights rights(before);
    CHECK(rights.gate(*before.find(piece)));
    for (const Use use : {Use::examine, Use::photograph, Use::show, Use::print}) {
      CHECK_FALSE(rights.may(*before.find(piece), use));
    }
    CHECK(rights.withheld(*before.find(piece)));
    CHECK_FALSE(rights.may(*before.find(picture), Use::print));
  }
  answered(small, piece.value, Use::print, Leave::given);
  const model::Show& printed = small.settled();
  CHECK_FALSE(Rights(printed).withheld(*printed.find(piece)));
  CHECK_FALSE(Rights(printed).may(*printed.find(picture), Use::print));  // not photographed yet
  answered(small, piece.value, Use::photograph, Leave::given);
  const model::Show& all = small.settled();
  CHECK(Rights(all).may(*all.find(picture), Use::print));
}

TEST_CASE("to have asked a community is enough to wait for it") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "silver");
  answered(small, piece.value, Use::print, Leave::given, 50);
  answered(small, piece.value, Use::examine, Leave::asked);
  const model::Show& show = small.settled();
  const Rights rights(show);
  CHECK(rights.gate(*show.find(piece)));
  CHECK_FALSE(rights.may(*show.find(piece), Use::examine));
  CHECK(rights.may(*show.find(piece), Use::print));  // that answer is there
}

TEST_CASE("a picture follows its piece unless it has an answer of its own; credits add up") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "silver");
  const auto plain = small.add(model::Photograph{.piece = piece, .file = "a.png"});
  const auto own = small.add(
      model::Photograph{.piece = piece, .file = "b.png", .credit = "Photograph: T. M."});
  small.add(model::Permission{
      .subject = piece.value, .leave = Leave::given, .credit = "Lent by a friend"});
  answered(small, own.value, Use::print, Leave::refused);
  const model::Show& show = small.settled();
  const Rights rights(show);
  CHECK(rights.may(*show.find(plain), Use::print));
  CHECK_FALSE(rights.may(*show.find(own), Use::print));
  CHECK(rights.credit(*show.find(plain), Use::print) == "Lent by a friend");
  CHECK(rights.credit(*show.find(own), Use::print) == "Photograph: T. M.; Lent by a friend");
}
