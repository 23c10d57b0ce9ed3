#include "evidence/statement.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numeric>

using namespace backmark;
using namespace backmark::evidence;

namespace {

const YearSpan years{{1901}, {2000}};
const LagBelief no_lag = learned_lag({});

double sum_of(const std::vector<double>& x) {
  return std::accumulate(x.begin(), x.end(), 0.0);
}

Statement about(int year, double spread, double reliability, std::string origin = "") {
  return {Saying::about, year, year, spread, reliability, std::move(origin)};
}

std::vector<double> flat() {
  return std::vector<double>(100, 0.01);
}

}  // namespace

TEST_CASE("against a flat curve a statement neither gains nor loses trust") {
  const auto factors = statement_factors({about(1950, 5, 0.85)}, {years, no_lag, 2000});
  const auto weighed = weigh_statements(flat(), factors);
  CHECK(weighed.wrong_p[0] == doctest::Approx(0.15));
  CHECK(weighed.agree_log[0] == doctest::Approx(0).epsilon(1e-9));
  CHECK(sum_of(weighed.p) == doctest::Approx(1));
}

TEST_CASE(
    "a story that style contradicts is doubted, and drags the piece no further than 1 - r lets "
    "it") {
  // By hand: style sure of 1910, an inscription of 1990 with r = 0.9 has B = 0, so it is wrong
  // for certain, and the year stays 1910.
  std::vector<double> style(100, 0);
  style[9] = 1;
  const auto factors =
      statement_factors({{Saying::exact, 1990, 1990, 0, 0.9, ""}}, {years, no_lag, 2000});
  const auto weighed = weigh_statements(style, factors);
  CHECK(weighed.p[9] == doctest::Approx(1));
  CHECK(weighed.wrong_p[0] == doctest::Approx(1));
  // With 1 % of style on 1990: p(1990) : p(1910) = 0.01 (0.9 x 100 + 0.1) : 0.99 x 0.1.
  style[9] = 0.99;
  style[89] = 0.01;
  const auto shared = weigh_statements(style, factors);
  const double a = 0.01 * 90.1;
  const double b = 0.99 * 0.1;
  CHECK(shared.p[89] == doctest::Approx(a / (a + b)));
  CHECK(shared.wrong_p[0] == doctest::Approx(0.1 / (0.1 + 0.9 * 1)));
}

TEST_CASE("three tellers of one story count once") {
  const auto once = statement_factors({about(1950, 5, 0.8, "book")}, {years, no_lag, 2000});
  const auto thrice = statement_factors(
      {about(1950, 5, 0.8, "book"), about(1950, 5, 0.8, "book"), about(1950, 5, 0.8, "book")},
      {years, no_lag, 2000});
  const auto apart = statement_factors(
      {about(1950, 5, 0.8), about(1950, 5, 0.8), about(1950, 5, 0.8)}, {years, no_lag, 2000});
  REQUIRE(thrice.size() == 1);
  CHECK(thrice[0].members.size() == 3);
  REQUIRE(apart.size() == 3);
  const auto p_once = weigh_statements(flat(), once).p;
  const auto p_thrice = weigh_statements(flat(), thrice).p;
  const auto p_apart = weigh_statements(flat(), apart).p;
  for (std::size_t t = 0; t < 100; ++t) {
    CHECK(p_thrice[t] == doctest::Approx(p_once[t]));
  }
  CHECK(p_apart[49] > 1.3 * p_once[49]);
}

TEST_CASE("facts of one origin stand or fall together") {
  // Naive twin: enumerate the one switch. Two facts multiply when it is on, and say nothing
  // when off.
  const std::vector<Statement> facts{about(1950, 5, 0.7, "letter"),
                                     {Saying::latest, 0, 1948, 0, 0.7, "letter"}};
  const auto factors = statement_factors(facts, {years, no_lag, 2000});
  REQUIRE(factors.size() == 1);
  std::vector<double> twin(100);
  double on_sum = 0;
  for (int t = 0; t < 100; ++t) {
    const double z = (1901 + t - 1950) / 5.0;
    twin[static_cast<std::size_t>(t)] = 1901 + t <= 1948 ? std::exp(-0.5 * z * z) : 0;
    on_sum += twin[static_cast<std::size_t>(t)];
  }
  const auto weighed = weigh_statements(flat(), factors);
  for (std::size_t t = 0; t < 100; ++t) {
    CHECK(weighed.p[t] == doctest::Approx(0.7 * twin[t] / on_sum + 0.3 / 100));
  }
}

TEST_CASE("each statement is judged by all else, as plain enumeration of the switches says") {
  std::vector<double> style(100);
  for (std::size_t t = 0; t < 100; ++t) {
    style[t] = std::exp(-0.5 * std::pow((static_cast<double>(t) - 40) / 12, 2));
  }
  const std::vector<Statement> said{
      about(1935, 4, 0.85), about(1990, 6, 0.6), {Saying::interval, 1930, 1960, 3, 0.9, ""}};
  const auto factors = statement_factors(said, {years, no_lag, 2000});
  const auto weighed = weigh_statements(style, factors);
  // Eight worlds: which of the three are right.
  double total = 0;
  double wrong[3] = {0, 0, 0};
  std::vector<double> year(100, 0);
  for (unsigned world = 0; world < 8; ++world) {
    for (std::size_t t = 0; t < 100; ++t) {
      double p = style[t];
      for (std::size_t j = 0; j < 3; ++j) {
        const bool right = (world >> j & 1U) != 0;
        p *= right ? factors[j].reliability * factors[j].shape[t] : 1 - factors[j].reliability;
      }
      total += p;
      year[t] += p;
      for (std::size_t j = 0; j < 3; ++j) {
        wrong[j] += (world >> j & 1U) == 0 ? p : 0;
      }
    }
  }
  for (std::size_t j = 0; j < 3; ++j) {
    CHECK(weighed.wrong_p[j] == doctest::Approx(wrong[j] / total));
  }
  for (std::size_t t = 0; t < 100; ++t) {
    CHECK(weighed.p[t] == doctest::Approx(year[t] / total));
  }
}

TEST_CASE("acquired by a year says made before, and more likely not long before") {
  const Statement acquired{Saying::acquired, 0, 1980, 0, 1, ""};
  const auto shape = statement_shape(acquired, years, no_lag, 2000);
  CHECK(shape[80] == 0);         // 1981
  CHECK(shape[60] > shape[30]);  // 1961 against 1931
  CHECK(shape[0] > 0);
}

TEST_CASE("the lag is learned, and what is cut off at today is allowed for") {
  // Lags drawn with mean 30 but cut: only those acquired by 2000 are known. The plain mean of
  // the lags is too short; the belief is not.
  std::vector<LagExample> examples;
  double plain = 0;
  int kept = 0;
  for (int made = 1900; made < 2000; ++made) {
    for (int k = 0; k < 20; ++k) {
      // Quantiles of the exponential stand for draws.
      const double lag = -30 * std::log(1 - (k + 0.5) / 20);
      if (made + lag <= 2000) {
        examples.push_back({made, made + static_cast<int>(lag), 2000});
        plain += lag;
        ++kept;
      }
    }
  }
  const LagBelief belief = learned_lag(examples);
  const double mean =
      std::inner_product(belief.p.begin(), belief.p.end(), belief.mean_years.begin(), 0.0);
  CHECK(plain / kept < 25);
  CHECK(mean == doctest::Approx(30).epsilon(0.08));
}

TEST_CASE("a hard limit with a soft edge makes the years beyond it dear, not impossible") {
  const Statement latest{Saying::latest, 0, 1950, 2, 0.98, ""};
  const auto weighed =
      weigh_statements(flat(), statement_factors({latest}, {years, no_lag, 2000}));
  CHECK(weighed.p[49] > weighed.p[51]);
  CHECK(weighed.p[51] > weighed.p[55]);
  CHECK(weighed.p[99] > 0);
  CHECK(weighed.p[99] < 0.05 * weighed.p[0]);
}

TEST_CASE("years before our era and a statement wholly outside the grid are no trouble") {
  const YearSpan old{{-300}, {-201}};
  const auto inside =
      statement_shape({Saying::about, -250, -250, 5, 0.9, ""}, old, no_lag, 2000);
  CHECK(inside[50] == 1);
  const auto outside =
      statement_shape({Saying::exact, 1950, 1950, 0, 0.9, ""}, old, no_lag, 2000);
  CHECK(outside[0] == 1);
  CHECK(outside[99] == 1);
}

TEST_CASE(
    "more certain statements narrow the year, and shifting every year shifts the answer") {
  const auto weak =
      weigh_statements(flat(), statement_factors({about(1950, 5, 0.5)}, {years, no_lag, 2000}));
  const auto strong = weigh_statements(
      flat(), statement_factors({about(1950, 5, 0.95)}, {years, no_lag, 2000}));
  CHECK(strong.p[49] > weak.p[49]);
  const YearSpan later{{2001}, {2100}};
  const auto shifted = weigh_statements(
      flat(), statement_factors({about(2050, 5, 0.95)}, {later, no_lag, 2100}));
  CHECK(shifted.p == strong.p);
}

TEST_CASE("curves over different years are not mixed") {
  const auto factors = statement_factors({about(1950, 5, 0.5)}, {years, no_lag, 2000});
  CHECK_THROWS_AS(weigh_statements(std::vector<double>(90, 1.0 / 90), factors), BrokenPromise);
}
