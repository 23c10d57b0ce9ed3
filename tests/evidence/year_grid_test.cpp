#include "evidence/year_grid.h"

#include <doctest/doctest.h>
#include <numeric>

using namespace backmark;
using namespace backmark::evidence;

TEST_CASE("a grid of five thousand years has cells of ten, one of eighty cells of one") {
  CHECK(YearGrid::over({{-3000}, {1999}}).width == 10);
  CHECK(YearGrid::over({{-3000}, {1999}}).cells() == 500);
  CHECK(YearGrid::over({{1900}, {1979}}).width == 1);
}

TEST_CASE("a span is spread by the share of each cell it covers, across the year zero too") {
  const YearGrid grid{{{-20}, {19}}, 10};
  std::vector<double> p(4, 0.0);
  add_span(grid, {{-5}, {14}}, 1, p);
  CHECK(p[0] == doctest::Approx(0));
  CHECK(p[1] == doctest::Approx(0.25));
  CHECK(p[2] == doctest::Approx(0.5));
  CHECK(p[3] == doctest::Approx(0.25));
  CHECK(mass_between(grid, cumulated(p), {{-5}, {4}}) == doctest::Approx(0.375));
}

TEST_CASE("smoothing keeps every bit of mass on the axis") {
  std::vector<double> p(30, 0.0);
  p[0] = 0.25;
  p[29] = 0.75;
  Smoother(30, 4).apply(p);
  CHECK(std::accumulate(p.begin(), p.end(), 0.0) == doctest::Approx(1));
  CHECK(p[0] > p[1]);
  CHECK(p[28] < p[29]);
}

TEST_CASE("years of a cell share its probability, the last cell cut by the axis") {
  const YearGrid grid{{{1900}, {1904}}, 2};
  const auto years = to_years(grid, {0.2, 0.4, 0.4});
  CHECK(years == std::vector<double>{0.1, 0.1, 0.2, 0.2, 0.4});
}
