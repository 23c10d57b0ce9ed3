#include "words/use_phrase.h"

#include <doctest/doctest.h>

using namespace backmark;

namespace {

std::string said(model::YearEnd start, model::YearEnd end) {
  return words::phrase_use(start, end, {{1900}, {1985}});
}

}  // namespace

TEST_CASE("a stretch of use is said as surely as it is known") {
  const model::YearEnd start{{1947}, {1948}, {1949}};
  const model::YearEnd end{{1965}, {1966}, {1967}};
  CHECK(said(start, end) == "1948 to 1966");
  CHECK(said({{1940}, {1948}, {1949}}, end) == "about 1948 to 1966");
  CHECK(said({{1960}, {1964}, {1966}}, {{1975}, {1982}, {1985}}) ==
        "about 1964 to 1982 or later");
  CHECK(said({{1900}, {1904}, {1908}}, {{1930}, {1931}, {1940}}) ==
        "about 1904 or earlier to 1931");
  CHECK(said({{1950}, {1955}, {1956}}, {{1954}, {1955}, {1960}}) == "about 1955");
}
