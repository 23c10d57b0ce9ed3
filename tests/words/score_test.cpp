#include "words/score.h"

#include <doctest/doctest.h>

using namespace backmark;
using namespace backmark::model;
using namespace backmark::words;

TEST_CASE("the interval of a share is Wilson's") {
  // L. D. Brown, T. T. Cai and A. DasGupta, "Interval estimation for a binomial proportion",
  // Statistical Science 16 (2001): for 0 of n the upper end is z² / (n + z²); and the interval
  // is symmetric about one half for half hits (both follow from the formula by hand).
  const auto none = wilson(0, 10);
  CHECK(none.low == doctest::Approx(0));
  CHECK(none.high == doctest::Approx(2.7055434 / 12.7055434));
  const auto half = wilson(10, 20);
  CHECK(half.low + half.high == doctest::Approx(1));
  CHECK(wilson(0, 0).high == 1);
}

TEST_CASE("thin rows are pooled with the row below, and a phrase that lies is found out") {
  Show show;
  PhraseBook phrases;
  std::vector<KnownPiece> known;
  for (int id = 1; id <= 36; ++id) {
    const bool exact = id <= 4;
    phrases.put({id}, {.made = exact      ? "1954"
                               : id <= 16 ? "1954 or 1955"
                                          : "about 1955",
                       .made_row = exact      ? 1
                                   : id <= 16 ? 2
                                              : 5});
    known.push_back({{id}, {id <= 16 ? 1954 : 1955 + (id % 2) * 9}, {}});
  }
  // The curator's own phrases and undated pieces are not scored.
  phrases.put({37}, {.made = "1954", .made_row = 0});
  phrases.put({38}, {.made = "not dated", .made_row = 10});
  known.push_back({{37}, {1800}, {}});
  known.push_back({{38}, {1800}, {}});
  const ScoreCard card = score_phrases(show, phrases, known);
  REQUIRE(card.years.size() == 2);
  CHECK(card.years[0].rows == "1954 + 1954 or 1955");
  CHECK(card.years[0].n == 16);
  CHECK(card.years[0].hits == 16);
  CHECK(card.years[0].kept());
  CHECK(card.years[1].n == 20);
  CHECK(card.years[1].hits == 10);
  CHECK(card.years[1].floor == doctest::Approx(0.8));
  CHECK_FALSE(card.years[1].kept());
  CHECK(card.makers.empty());
}
