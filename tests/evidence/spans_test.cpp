#include "evidence/spans.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <numeric>

using namespace backmark;
using namespace backmark::evidence;

namespace {

const YearSpan years{{1901}, {2000}};

std::vector<double> known(int year) {
  std::vector<double> p(100, 0);
  p[static_cast<std::size_t>(year - 1901)] = 1;
  return p;
}

double mean_year(const std::vector<double>& p) {
  double mean = 0;
  for (std::size_t t = 0; t < p.size(); ++t) {
    mean += p[t] * (1901 + static_cast<double>(t));
  }
  return mean;
}

}  // namespace

TEST_CASE("the belief agrees with plain enumeration of every span") {
  const YearSpan small{{0}, {11}};
  SpanPrior prior;
  prior.start = 2;
  prior.start_sd = 3;
  prior.length_mean = 5;
  prior.length_sd = 2;
  std::vector<double> dated(12, 0);
  dated[7] = 1;
  const auto belief = span_belief(prior, small, {dated}, 0.05);
  // Written out again from the header: normal plus 2 % flat start, gamma length, 1/L for the
  // piece.
  double total = 0;
  std::vector<double> year(12, 0);
  for (int s = 0; s < 12; ++s) {
    for (int e = s; e < 12; ++e) {
      const double length = e - s + 1;
      const double z = (s - 2) / 3.0;
      const double start =
          0.98 * std::exp(-0.5 * z * z) / (3 * std::sqrt(2 * 3.14159265358979323846)) +
          0.02 / 12;
      const double shape = 25.0 / 4;
      const double gamma = std::pow(length, shape - 1) * std::exp(-shape / 5 * length);
      const double piece = 0.95 * (s <= 7 && 7 <= e ? 1 / length : 0) + 0.05 / 12;
      const double w = start * gamma * piece;
      total += w;
      for (int t = s; t <= e; ++t) {
        year[static_cast<std::size_t>(t)] += w / length;
      }
    }
  }
  for (std::size_t t = 0; t < 12; ++t) {
    CHECK(belief.year_p[t] == doctest::Approx(year[t] / total));
  }
}

TEST_CASE("a documented start and a dated piece both move the span") {
  SpanPrior prior;
  const auto nothing = span_belief(prior, years, {}, 0.03);
  CHECK(std::accumulate(nothing.year_p.begin(), nothing.year_p.end(), 0.0) ==
        doctest::Approx(1));
  prior.start = 1930;
  const auto documented = span_belief(prior, years, {}, 0.03);
  CHECK(mean_year(documented.start_p) == doctest::Approx(1930).epsilon(0.002));
  CHECK(mean_year(documented.year_p) > 1936);
  CHECK(mean_year(documented.year_p) < 1946);
  const auto taught = span_belief(prior, years, {known(1970), known(1968), known(1971)}, 0.03);
  CHECK(mean_year(taught.end_p) > 1968);
}

TEST_CASE("one stray piece does not stretch a working life over a century") {
  SpanPrior prior;
  prior.start = 1930;
  prior.end = 1950;
  const auto belief = span_belief(prior, years, {known(1935), known(1940), known(1995)}, 0.03);
  CHECK(mean_year(belief.end_p) < 1956);
  const auto factor = span_factor(belief, 0.03);
  CHECK(*std::min_element(factor.begin(), factor.end()) >= 0.03);
  CHECK(std::accumulate(factor.begin(), factor.end(), 0.0) == doctest::Approx(100));
}
