#include "model/show.h"

#include <doctest/doctest.h>

#include "model/change.h"

using namespace backmark;
using namespace backmark::model;

namespace {

Show two_pieces() {
  Show show;
  show.all<Piece>() = {{.id = {2}, .number = "ES 2"}, {.id = {1}, .number = "ES 1"}};
  show.all<Observation>() = {
      {.id = {5}, .piece = {2}}, {.id = {4}, .piece = {1}}, {.id = {3}, .piece = {2}}};
  show.all<Claim>() = {{.id = {6}, .about = About::maker, .subject = 1},
                       {.id = {7}, .about = About::piece, .subject = 2}};
  show.next_id = 8;
  show.settle();
  return show;
}

}  // namespace

TEST_CASE("a piece is found by the number people say") {
  const Show show = two_pieces();
  REQUIRE(show.piece("ES 2") != nullptr);
  CHECK(show.piece("ES 2")->id.value == 2);
  CHECK(show.piece("ES 9") == nullptr);
}

TEST_CASE("observations come by piece, a claim on a maker is not a claim on a piece") {
  const Show show = two_pieces();
  CHECK(show.observations_of({2}).size() == 2);
  CHECK(show.observations_of({2})[0].id.value == 3);
  CHECK(show.claims_on({1}).empty());
  CHECK(show.claims_on({2}).size() == 1);
}

TEST_CASE("a change uses the show's words and brings its own") {
  Show show = two_pieces();
  const Word silver = show.pool.take("silver");
  Change change(show, "note", "a test");
  CHECK(change.word("silver") == silver);
  const Word jet = change.word("jet");
  CHECK(change.word("jet") == jet);
  CHECK(change.text(jet) == "jet");
  CHECK(change.new_words().size() == 1);
  CHECK(change.add(Piece{.number = "ES 3"}).value == 8);
  CHECK_FALSE(change.empty());
}
