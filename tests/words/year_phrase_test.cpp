#include "words/year_phrase.h"

#include <doctest/doctest.h>
#include <numeric>

#include "base/random.h"
#include "base/text.h"
#include "words/table.h"

using namespace backmark;
using namespace backmark::words;
using model::YearBelief;

namespace {

// Shares over runs of years, each spread evenly: {{1950, 1959, 0.9}, ...}.
struct Share {
  int first;
  int last;
  double p;
};

YearBelief belief_of(const std::vector<Share>& shares) {
  YearBelief belief{{{1880}, {2010}}, std::vector<double>(131)};
  for (const Share& share : shares) {
    for (int year = share.first; year <= share.last; ++year) {
      belief.p[static_cast<std::size_t>(year - 1880)] +=
          share.p / (share.last - share.first + 1);
    }
  }
  return belief;
}

// Smooth, lumpy, narrow and wide curves, some with two heaps.
YearBelief random_belief(Random& random) {
  YearBelief belief{{{1880}, {2010}}, std::vector<double>(131)};
  const int heaps = 1 + static_cast<int>(random.below(3));
  for (int heap = 0; heap < heaps; ++heap) {
    const double centre = 1890 + 110 * random.uniform();
    const double width = 0.3 + 20 * random.uniform() * random.uniform();
    const double share = 0.05 + random.uniform() * random.uniform();
    for (std::size_t cell = 0; cell < belief.p.size(); ++cell) {
      const double z = (1880.0 + static_cast<double>(cell) - centre) / width;
      belief.p[cell] += share / width * std::exp(-z * z / 2);
    }
  }
  const double sum = std::accumulate(belief.p.begin(), belief.p.end(), 0.0);
  for (double& p : belief.p) {
    p /= sum;
  }
  return belief;
}

}  // namespace

TEST_CASE("each row of the year table is reached by the belief it describes") {
  CHECK(phrase_year(belief_of({{1954, 1954, 0.90}, {1930, 1980, 0.10}})).text == "1954");
  CHECK(phrase_year(belief_of({{1954, 1954, 0.5}, {1955, 1955, 0.41}, {1900, 1990, 0.09}}))
            .text == "1954 or 1955");
  CHECK(phrase_year(belief_of({{1948, 1956, 0.91}, {1900, 1945, 0.09}})).text == "1948–56");
  CHECK(phrase_year(belief_of({{1950, 1959, 0.91}, {1900, 1945, 0.09}})).text == "1950s");
  CHECK(phrase_year(belief_of({{1950, 1960, 0.85}, {1900, 1945, 0.08}, {1980, 2000, 0.07}}))
            .text == "about 1955");
  CHECK(phrase_year(belief_of({{1950, 1959, 0.65}, {1900, 1945, 0.2}, {1980, 2000, 0.15}}))
            .text == "probably 1950s");
  CHECK(phrase_year(belief_of({{1947, 1967, 0.94}, {1900, 1945, 0.06}})).text == "1947–67");
  CHECK(phrase_year(belief_of({{1934, 1966, 0.85}, {1970, 2000, 0.15}})).text ==
        "mid-twentieth century");
  CHECK(phrase_year(belief_of({{1900, 2010, 1.0}})).text == "not dated");
  CHECK(phrase_year({}).text == "not dated");
}

TEST_CASE("a limit with a reason is printed only when nothing nearer can be said") {
  const YearBelief wide = belief_of({{1885, 1960, 0.95}, {1961, 2010, 0.05}});
  CHECK(phrase_year(wide).text == "not dated");
  CHECK(phrase_year(wide, limit_in("acquired in 1960")).text == "before 1961");
  const YearBelief late = belief_of({{1947, 2010, 0.95}, {1880, 1946, 0.05}});
  CHECK(phrase_year(late, limit_in("bar slide, made from 1947")).text == "after 1946");
  CHECK_FALSE(limit_in("lot 12, page 3"));
  CHECK(limit_in("bought 1931, given 1974")->year.value == 1974);
}

TEST_CASE("of years that serve equally, about takes the one nearest the median") {
  // Everything within 1953 to 1957: any centre from 1952 to 1958 holds all of it, so row 3
  // would win; a heap apart keeps the run under nine tenths.
  const auto phrase =
      phrase_year(belief_of({{1953, 1957, 0.85}, {1900, 1910, 0.08}, {1990, 2000, 0.07}}));
  CHECK(phrase.text == "about 1955");
  CHECK(phrase.p == doctest::Approx(0.85));
}

TEST_CASE("whatever the curve, a phrase is at least as likely as its row says") {
  Random random(7);
  std::vector<int> reached(11);
  for (int trial = 0; trial < 20'000; ++trial) {
    const YearBelief belief = random_belief(random);
    const YearLimit limit{{1880 + static_cast<int>(random.below(131))}};
    const YearPhrase phrase = phrase_year(belief, limit);
    ++reached[static_cast<std::size_t>(phrase.row)];
    if (phrase.row == 10) {
      continue;
    }
    // The claim is read back from the words alone, so the words themselves are tested.
    const auto claim = claimed_years(phrase.text);
    REQUIRE_MESSAGE(claim, phrase.text);
    CHECK_MESSAGE(row_of_year_phrase(phrase.text) == phrase.row, phrase.text);
    const double p = belief.inside(claim->first, claim->last);
    CHECK_MESSAGE(p >= row_of(year_table(), phrase.row).floor - 1e-9, phrase.text);
    CHECK(p == doctest::Approx(phrase.p));
    CHECK_FALSE(contains(phrase.text, "circa"));
    CHECK_FALSE(contains(phrase.text, "c."));
    CHECK_FALSE(contains(phrase.text, "?"));
  }
  for (int row = 1; row <= 10; ++row) {
    CHECK_MESSAGE(reached[static_cast<std::size_t>(row)] > 0, row);
  }
}

TEST_CASE("no shorter run of years would have done") {
  Random random(11);
  for (int trial = 0; trial < 2'000; ++trial) {
    const YearBelief belief = random_belief(random);
    const YearPhrase phrase = phrase_year(belief);
    if (phrase.row != 3 && phrase.row != 7) {
      continue;
    }
    // The naive twin: every run that is one year shorter, summed cell by cell.
    const auto claim = claimed_years(phrase.text);
    const int shorter = claim->length() - 1;
    for (int first = 1880; first + shorter - 1 <= 2010 && shorter != 9; ++first) {
      CHECK(belief.inside({first}, {first + shorter - 1}) < 0.90);
    }
  }
}

TEST_CASE("a frozen phrase stays until its chance has left the row by three in a hundred") {
  const auto drifting = [](double p) {
    return belief_of({{1950, 1960, p}, {1900, 1910, (1 - p) / 2}, {1990, 2009, (1 - p) / 2}});
  };
  CHECK(phrase_year(drifting(0.79)).text != "about 1955");
  CHECK(phrase_year(drifting(0.79), {}, "about 1955").text == "about 1955");
  CHECK(phrase_year(drifting(0.76), {}, "about 1955").text != "about 1955");
  // A nearer phrase has to be clear of its own floor too.
  const auto decade = [](double p) {
    return belief_of({{1950, 1959, p}, {1960, 1962, 1 - p}});
  };
  CHECK(phrase_year(decade(0.91)).text == "1950s");
  CHECK(phrase_year(decade(0.91), {}, "about 1955").text == "about 1955");
  CHECK(phrase_year(decade(0.95), {}, "about 1955").text != "about 1955");
  CHECK(phrase_year(decade(0.91), {}, "a word of another program").text == "1950s");
}

TEST_CASE("years are read back from their words") {
  CHECK(claimed_years("1898–1903") == YearSpan{{1898}, {1903}});
  CHECK(claimed_years("1901–09") == YearSpan{{1901}, {1909}});
  CHECK(year_range({{1901}, {1909}}) == "1901–09");
  CHECK(year_range({{1898}, {1903}}) == "1898–1903");
  CHECK(claimed_years("late nineteenth century") == YearSpan{{1867}, {1900}});
  CHECK(claimed_years("early twentieth century") == YearSpan{{1901}, {1933}});
  CHECK(claimed_years("before 1961")->last == Year{1960});
  CHECK(claimed_years("after 1946")->first == Year{1947});
  for (const char* text : {"not dated", "c. 1950", "circa 1950", "1950?", "1956–48", "soon"}) {
    CHECK_FALSE_MESSAGE(claimed_years(text), text);
  }
}

TEST_CASE("odds are said as chances in twenty, never more than nineteen") {
  CHECK(spoken_odds(belief_of({{1952, 1957, 0.84}, {1940, 1951, 0.08}, {1958, 1969, 0.08}})) ==
        "16 chances in 20: 1952 to 1957");
  CHECK(spoken_odds(belief_of({{1954, 1954, 1.0}})) == "19 chances in 20: 1954");
  CHECK(spoken_odds({}) == "not dated");
}
