#include "evidence/recalibration.h"

#include <cmath>
#include <doctest/doctest.h>

#include "base/random.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

std::vector<double> bell(const YearGrid& grid, double middle, double sd) {
  std::vector<double> p(grid.cells());
  double sum = 0;
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    const double z = (static_cast<double>(cell) - middle) / sd;
    p[cell] = std::exp(-0.5 * z * z);
    sum += p[cell];
  }
  for (double& value : p) {
    value /= sum;
  }
  return p;
}

}  // namespace

TEST_CASE("answers that are twice too sure are widened to what is seen") {
  const YearGrid grid{{{1800}, {1999}}, 1};
  Random random(1);
  std::vector<Known> known;
  for (int i = 0; i < 4000; ++i) {
    const double middle = 60 + 80 * random.uniform();
    const int year = 1800 + static_cast<int>(std::lround(middle + 20 * random.normal()));
    known.push_back({cumulated(bell(grid, middle, 10)), {{year}, {year}}, 1});
  }
  const RankMap map(grid, known, 20, 100);
  const auto p = map.mend(bell(grid, 100, 10));
  const double width = quantile(grid.span, p, 0.9) - quantile(grid.span, p, 0.1);
  CHECK(width > 1.5 * 2 * 1.2816 * 10);  // nominal 80 % width of the sure answer: 25.6 years
  double sum = 0;
  for (const double value : p) {
    sum += value;
  }
  CHECK(sum == doctest::Approx(1));
}

TEST_CASE("with nothing known the rank map changes nothing") {
  const YearGrid grid{{{1800}, {1899}}, 1};
  const auto p = bell(grid, 40, 12);
  const auto mended = RankMap(grid, {}, 20, 100).mend(p);
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    CHECK(mended[cell] == doctest::Approx(p[cell]).epsilon(1e-6));
  }
}

TEST_CASE("odds that are too timid are sharpened") {
  Random random(2);
  std::vector<YesNo> answers;
  for (int i = 0; i < 5000; ++i) {
    const double odds_log = 3 * random.normal();
    const double truth = 1 / (1 + std::exp(-(0.5 + 2 * odds_log)));
    answers.push_back({1 / (1 + std::exp(-odds_log)), random.chance(truth), 1});
  }
  const OddsMap map = fit_odds(answers);
  CHECK(map.slope == doctest::Approx(2).epsilon(0.1));
  CHECK(map.offset == doctest::Approx(0.5).epsilon(0.3));
  CHECK(fit_odds({})(0.3) == doctest::Approx(0.3));
}

TEST_CASE("pieces bought new are learned from, and no piece is made after it was met with") {
  const YearGrid grid{{{1800}, {1999}}, 1};
  Random random(3);
  const std::vector<double> flat(200, 1.0 / 200);
  std::vector<Arrival> arrivals;
  for (int i = 0; i < 2000; ++i) {
    const int latest = 1850 + static_cast<int>(random.below(150));
    const int year =
        random.chance(0.5)
            ? latest
            : 1800 + static_cast<int>(random.below(static_cast<std::size_t>(latest - 1799)));
    arrivals.push_back({&flat, {{year}, {year}}, {latest}, 1});
  }
  const LagMap map(grid, arrivals, 0.02, 10);
  auto p = flat;
  map.apply(p, {1950});
  CHECK(p[150] == doctest::Approx(0.5).epsilon(0.15));
  double later = 0;
  for (std::size_t t = 151; t < 200; ++t) {
    later += p[t];
  }
  CHECK(later < 0.02);
}
