#include "press/findings.h"

#include <doctest/doctest.h>

using namespace backmark;
using namespace backmark::press;

namespace {

model::Condition seen(model::Id<model::Piece> piece, double x, const char* text, int day) {
  model::Condition state;
  state.piece = piece;
  state.x_mm = x;
  state.text = text;
  state.day = day;
  return state;
}

}  // namespace

TEST_CASE("a finding seen again is one finding, and the last word counts") {
  model::Show show;
  const model::Id<model::Piece> piece{7};
  auto& states = show.all<model::Condition>();
  states.push_back(seen(piece, 0, "one dent, deeper", 400));
  states.push_back(seen(piece, 1, "one dent", 100));
  states.push_back(seen(piece, 20, "a chip", 400));
  states.push_back(seen({8}, 0, "of another piece", 300));
  const auto all = findings_by_piece(show);
  REQUIRE(all.size() == 2);
  const Findings& of = all.at(7);
  REQUIRE(of.list.size() == 2);
  CHECK(of.list[0].last->text == "one dent, deeper");
  CHECK(since_last(of.list[0], of) == "5 February 1971 · on 11 April 1970: one dent");
  CHECK(of.list[1].is_new);
  CHECK(since_last(of.list[1], of) == "5 February 1971 · new since 11 April 1970");
  // On the only day of looking nothing is new: there is nothing to compare with.
  CHECK_FALSE(all.at(8).list[0].is_new);
}
