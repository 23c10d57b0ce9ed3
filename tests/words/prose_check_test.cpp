// The odds of the table are those of words/table.h; the sentences are invented.
#include "words/prose_check.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::words;

namespace {

model::PieceBelief in_years(int first, int last) {
  model::PieceBelief belief{.piece = {1}, .dated = true};
  belief.year.span = {{1930}, {1979}};
  for (int year = 1930; year < 1980; ++year) {
    belief.year.p.push_back(year >= first && year <= last ? 1.0 / (last - first + 1) : 0.0);
  }
  return belief;
}

Problems told(std::string_view prose, model::Phrases phrases) {
  model::Show show;
  show.all<model::Maker>().push_back({.id = {2}, .key = "vessen", .name = "Oda Vessen"});
  show.settle();
  return check_prose(prose, show, in_years(1948, 1956), phrases, "ES 1, prose");
}

const model::Phrases probable{
    .made = "1948–56", .maker = "attributed to Oda Vessen", .made_row = 3, .maker_row = 3};

}  // namespace

TEST_CASE("sentences end at stops, not at numbers and initials") {
  const auto all = sentences("See no. 4 by J. Lund. It was “made.” Was it?\n\nYes");
  REQUIRE(all.size() == 4);
  CHECK(all[0] == "See no. 4 by J. Lund.");
  CHECK(all[3] == "Yes");
}

TEST_CASE("years are read as people write them, and measures are no years") {
  const auto years = years_in("about 1955, 1948-56, the 1930s, before 1961, 1948–1950");
  REQUIRE(years.size() == 5);
  CHECK(years[0].years == YearSpan{{1950}, {1960}});
  CHECK(years[1].years == YearSpan{{1948}, {1956}});
  CHECK(years[2].years == YearSpan{{1930}, {1939}});
  CHECK(years[3].years.last == Year{1960});
  CHECK(years[4].years == YearSpan{{1948}, {1950}});
  CHECK(years_in("1200 mm, 19.1950, $1950, ES 19500").empty());
}

TEST_CASE("a year of making that the record speaks against is told; others are left alone") {
  const auto problems = told("It was made in 1962.", probable);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].what == "the prose says \"1962\"; the record says 1948–56");
  CHECK(problems[0].where == "ES 1, prose");
  CHECK(told("It was made in 1950.", probable).empty());
  CHECK(told("Made about 1959.", probable).empty());  // 1954 to 1964: a third of the chance
  CHECK(told("It was bought in 1962.", probable).empty());
  CHECK(told("The catalogue of 1962 shows it.", probable).empty());
  CHECK(told("It was not made in 1962.", probable).empty());
  model::Phrases own = probable;
  own.made_row = 0;  // the curator's own word stands
  CHECK(told("It was made in 1962.", own).empty());
}

TEST_CASE("a maker given outright where the odds only attribute is told") {
  CHECK(told("A slide by Oda Vessen.", probable).size() == 1);
  CHECK(told("Probably by Oda Vessen.", probable).empty());
  CHECK(told("It was owned by a pilot.", probable).empty());
  model::Phrases sure = probable;
  sure.maker_row = 1;
  sure.maker = "Oda Vessen";
  CHECK(told("A slide by Oda Vessen.", sure).empty());
}

TEST_CASE("certainty that the odds do not bear is told") {
  const auto year = told("It was certainly made in 1950.", probable);
  REQUIRE(year.size() == 1);
  CHECK(contains(year[0].what, "sure of a year"));
  CHECK(told("Undoubtedly Oda Vessen knew it.", probable).size() == 1);
  CHECK(told("It is certainly heavy.", probable).empty());
}
