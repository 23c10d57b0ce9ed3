#include "model/show.h"

#include <doctest/doctest.h>

#include "base/text.h"
#include "model/changed.h"

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

TEST_CASE("what a change leaves alone is the same memory before and after it") {
  const Show before = two_pieces();
  Change change(before, "note", "a test");
  change.add(Observation{.piece = {1}});
  change.withdraw(Id<Claim>{6}, "a test");
  const Show after = changed(before, change);
  CHECK(after.all<Piece>().data() == before.all<Piece>().data());
  CHECK(after.all<Observation>().data() != before.all<Observation>().data());
  CHECK(after.observations_of({1}).size() == 2);
  CHECK(before.observations_of({1}).size() == 1);
  CHECK(after.all<Claim>().size() == 1);
  CHECK(before.all<Claim>().size() == 2);
}

TEST_CASE("a copy that is written to leaves the other alone, and outlives it") {
  Show copy;
  {
    const Show first = two_pieces();
    copy = first;
    copy.all<Piece>().push_back({.id = {9}, .number = "a number too long to lie in the text"});
    CHECK(first.all<Piece>().size() == 2);
    CHECK(first.piece("ES 1")->id.value == 1);
  }
  CHECK(copy.piece("ES 2")->id.value == 2);  // by the index of the first, which is gone
  copy.settle();
  REQUIRE(copy.piece("a number too long to lie in the text") != nullptr);
  CHECK(copy.piece("a number too long to lie in the text")->id.value == 9);
}

TEST_CASE("words keep their texts however often the show is copied") {
  Show show = two_pieces();
  std::vector<Word> words;
  for (int round = 0; round < 30; ++round) {
    Show next = show;
    for (int i = 0; i < 50; ++i) {
      words.push_back(next.pool.take(fmt::format("word {}", words.size())));
    }
    next.settle();
    show = next;
  }
  REQUIRE(words.size() == 1500);
  CHECK(show.pool.size() == 1501);
  for (std::size_t i = 0; i < words.size(); ++i) {
    REQUIRE(show.text(words[i]) == fmt::format("word {}", i));
    REQUIRE(show.pool.find(fmt::format("word {}", i)) == words[i]);
    REQUIRE(show.pool.take(fmt::format("word {}", i)) == words[i]);
  }
}
