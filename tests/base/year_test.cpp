#include "base/year.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>

using namespace backmark;

TEST_CASE("a curve normalises without overflow, however large its weights") {
  const Curve curve{{{1950}, {1952}}, {1000, 1000 + std::log(2.0), 1000}};
  const auto p = normalised(curve);
  CHECK(p[0] == doctest::Approx(0.25));
  CHECK(p[1] == doctest::Approx(0.5));
  CHECK(quantile(curve.span, p, 0.5).value == 1951);
  CHECK(quantile(curve.span, p, 0.1).value == 1950);
}

TEST_CASE("a curve without a weight for each year is a broken promise") {
  CHECK_THROWS_AS(normalised(Curve{{{1950}, {1952}}, {0, 0}}), BrokenPromise);
}

TEST_CASE("spans are closed at both ends and cross the year zero") {
  const YearSpan span{{-1}, {1}};
  CHECK(span.length() == 3);
  CHECK(span.contains({0}));
  CHECK(span.overlaps({{1}, {9}}));
  CHECK_FALSE(span.overlaps({{2}, {9}}));
}

TEST_CASE("nothing at all has weight minus infinity") {
  CHECK(log_sum_exp({}) == -std::numeric_limits<double>::infinity());
}
