#include "words/chance.h"

#include <doctest/doctest.h>

using backmark::words::drawn_chance;

TEST_CASE("no chance found by drawing is certain, and none is nothing") {
  CHECK(drawn_chance(0.624) == "62 %");
  CHECK(drawn_chance(0.994) == "99 %");
  CHECK(drawn_chance(0.995) == "more than 99 %");
  CHECK(drawn_chance(1) == "more than 99 %");
  CHECK(drawn_chance(0.006) == "1 %");
  CHECK(drawn_chance(0.005) == "less than 1 %");
  CHECK(drawn_chance(0) == "less than 1 %");
}
