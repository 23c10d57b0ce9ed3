#include "evidence/lineage_undated.h"

#include <cmath>
#include <doctest/doctest.h>
#include <map>

using namespace backmark;
using namespace backmark::evidence;

namespace {

constexpr int years = 8;
constexpr double stray = 0.1;

struct Borne {
  int variant;
  std::vector<double> weight;
};

const std::vector<Borne> borne{{0, {3, 2, 1, 0, 0, 0, 0, 0}}, {0, {0, 1, 2, 2, 1, 0, 0, 0}},
                               {1, {1, 1, 1, 1, 1, 1, 1, 1}}, {1, {0, 0, 0, 1, 3, 1, 0, 0}},
                               {2, {0, 0, 0, 0, 1, 2, 4, 1}}, {2, {0, 0, 0, 0, 0, 0, 0, 1}}};

std::vector<std::vector<double>> curves_with_strays(const LineageState& state) {
  auto curves = variant_curves(state, years);
  for (auto& curve : curves) {
    for (double& p : curve) {
      p = (1 - stray) * p + stray / 3;
    }
  }
  return curves;
}

// The plain sum over years, piece by piece.
double twin(const LineageState& state) {
  const auto curves = curves_with_strays(state);
  double log_p = 0;
  for (const Borne& piece : borne) {
    double sum = 0;
    double total = 0;
    for (std::size_t t = 0; t < years; ++t) {
      sum += piece.weight[t] * curves[static_cast<std::size_t>(piece.variant)][t];
      total += piece.weight[t];
    }
    log_p += std::log(sum / total);
  }
  return log_p;
}

UndatedMarks all_marks() {
  UndatedMarks marks(years, 3, stray);
  for (const Borne& piece : borne) {
    marks.add(piece.variant, piece.weight);
  }
  return marks;
}

}  // namespace

TEST_CASE("marks of undated pieces weigh changes as the plain sum over their years does") {
  const UndatedMarks marks = all_marks();
  for (const int overlap : {0, 1, 3, 11}) {
    for (int a = 0; a < years; ++a) {
      for (int b = a; b < years; ++b) {
        CHECK(marks.evidence({{a, b}, overlap}) ==
              doctest::Approx(twin({{a, b}, overlap})).epsilon(1e-9));
      }
    }
  }
}

TEST_CASE("changes and overlap are drawn as often as they are likely, years summed out") {
  const std::vector<int> overlaps{0, 2};
  std::map<std::vector<int>, double> expected;
  double total = 0;
  for (const int overlap : overlaps) {
    for (int a = 0; a < years; ++a) {
      for (int b = a; b < years; ++b) {
        total += expected[{a, b, overlap}] = std::exp(twin({{a, b}, overlap}));
      }
    }
  }
  const UndatedMarks marks = all_marks();
  Random random(11);
  LineageState state{{2, 5}, 0};
  std::map<std::vector<int>, double> seen;
  const int draws = 60000;
  for (int i = 0; i < draws; ++i) {
    marks.redraw(state, overlaps, random);
    seen[{state.change[0], state.change[1], state.overlap}] += 1.0 / draws;
  }
  for (const auto& [key, weight] : expected) {
    const double p = weight / total;
    // Draws hang together: an effective third of them is allowed for.
    CHECK(std::abs(seen[key] - p) < 5 * std::sqrt(p * 3 / draws) + 1e-9);
  }
}

TEST_CASE("a piece's year is drawn by what is known of it and by its mark") {
  UndatedMarks marks(years, 3, stray);
  const auto place = marks.add(1, borne[2].weight);
  const LineageState state{{2, 5}, 0};
  const auto curves = curves_with_strays(state);
  Random random(3);
  std::vector<double> seen(years, 0);
  const int draws = 30000;
  double total = 0;
  for (std::size_t t = 0; t < years; ++t) {
    total += curves[1][t];
  }
  for (int i = 0; i < draws; ++i) {
    seen[static_cast<std::size_t>(marks.draw_year(place, curves, random))] += 1.0 / draws;
  }
  for (std::size_t t = 0; t < years; ++t) {
    const double p = curves[1][t] / total;
    CHECK(std::abs(seen[t] - p) < 5 * std::sqrt(p / draws));
  }
}
