#include "evidence/lineage.h"

#include <cmath>
#include <doctest/doctest.h>
#include <map>

#include "base/result.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

const VariantCounts counts{
    {2, 1, 0, 1, 0, 0, 0, 0}, {0, 0, 1, 0, 1, 1, 0, 0}, {0, 0, 0, 0, 0, 1, 1, 1}};

double likelihood(const LineageState& state) {
  const auto curves = variant_curves(state, 8);
  double p = 1;
  for (std::size_t j = 0; j < 3; ++j) {
    for (std::size_t t = 0; t < 8; ++t) {
      p *= std::pow(curves[j][t], counts[j][t]);
    }
  }
  return p;
}

}  // namespace

TEST_CASE(
    "in every year the shares of the variants sum to 1, and each takes over at its change") {
  const auto curves = variant_curves({{20, 35}, 4}, 60);
  for (std::size_t t = 0; t < 60; ++t) {
    CHECK(curves[0][t] + curves[1][t] + curves[2][t] == doctest::Approx(1));
  }
  CHECK(curves[0][10] == 1);
  CHECK(curves[1][27] == 1);
  CHECK(curves[2][50] == 1);
  const auto sharp = variant_curves({{20}, 0}, 60);
  CHECK(sharp[0][19] == 1);
  CHECK(sharp[1][20] == 1);
}

TEST_CASE("evidence and draws of change years agree with plain enumeration") {
  for (const int overlap : {1, 2}) {
    std::map<std::pair<int, int>, double> twin;
    double total = 0;
    for (int a = 0; a < 8; ++a) {
      for (int b = a; b < 8; ++b) {
        twin[{a, b}] = likelihood({{a, b}, overlap});
        total += twin[{a, b}];
      }
    }
    CHECK(lineage_evidence(counts, overlap) == doctest::Approx(std::log(total)));
    Random random(5);
    std::map<std::pair<int, int>, double> seen;
    const int draws = 20000;
    for (int i = 0; i < draws; ++i) {
      const LineageState state = draw_lineage(counts, {overlap}, random);
      seen[{state.change[0], state.change[1]}] += 1.0 / draws;
    }
    for (const auto& [pair, p] : twin) {
      const double expected = p / total;
      CHECK(std::abs(seen[pair] - expected) < 5 * std::sqrt(expected / draws) + 1e-9);
    }
  }
}

TEST_CASE("prior draws are all ordered pairs alike") {
  Random random(6);
  std::map<std::pair<int, int>, int> seen;
  for (int i = 0; i < 15000; ++i) {
    const LineageState state = draw_lineage_prior(3, 5, {0}, random);
    ++seen[{state.change[0], state.change[1]}];
  }
  CHECK(seen.size() == 15);  // 5 x 6 / 2
  for (const auto& [pair, n] : seen) {
    CHECK(std::abs(n - 1000) < 5 * std::sqrt(1000.0));
  }
}
