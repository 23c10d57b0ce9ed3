#include <cmath>
#include <doctest/doctest.h>

#include "evidence/joint_fit.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

constexpr int years = 14;
constexpr double stray = 0.2;

// Pieces that are one maker's or nobody's listed, and bear nothing but what is said of their
// years: the last two pull the end of the span apart.
JointShow lone_pieces() {
  JointShow show;
  show.years = {{1900}, {1900 + years - 1}};
  show.makers.push_back({SpanPrior{.start = 3, .length_mean = 5, .length_sd = 3}, {}});
  for (const int middle : {4, 5, 7, 9, 12}) {
    JointPiece piece;
    for (int t = 0; t < years; ++t) {
      piece.year_weight.push_back(std::exp(-0.5 * (t - middle) * (t - middle)));
    }
    piece.maker_weight = {stray, 1 - stray};
    show.pieces.push_back(std::move(piece));
  }
  return show;
}

// Every span, with makers and years of the pieces summed out one by one.
struct Twin {
  std::vector<double> start = std::vector<double>(years, 0);
  std::vector<double> end = std::vector<double>(years, 0);
  std::vector<double> unlisted;
};

Twin enumerated(const JointShow& show) {
  Twin twin;
  twin.unlisted.assign(show.pieces.size(), 0);
  const SpanTable table(show.makers[0].span, show.years);
  double total = 0;
  for (int s = 0; s < years; ++s) {
    for (int e = s; e < std::min(years, s + table.longest()); ++e) {
      double p = table.at(s, e);
      std::vector<double> share;
      for (const JointPiece& piece : show.pieces) {
        double in_span = 0;
        double anywhere = 0;
        for (int t = 0; t < years; ++t) {
          const double weight = piece.year_weight[static_cast<std::size_t>(t)];
          in_span += s <= t && t <= e ? weight / (e - s + 1) : 0;
          anywhere += weight / years;
        }
        const double by_maker = (1 - stray) * in_span;
        const double by_nobody = stray * anywhere;
        p *= by_maker + by_nobody;
        share.push_back(by_nobody / (by_maker + by_nobody));
      }
      twin.start[static_cast<std::size_t>(s)] += p;
      twin.end[static_cast<std::size_t>(e)] += p;
      for (std::size_t i = 0; i < share.size(); ++i) {
        twin.unlisted[i] += p * share[i];
      }
      total += p;
    }
  }
  for (auto* row : {&twin.start, &twin.end, &twin.unlisted}) {
    for (double& x : *row) {
      x /= total;
    }
  }
  return twin;
}

}  // namespace

TEST_CASE(
    "spans and makers of pieces that are one maker's or nobody's agree with enumeration") {
  const JointShow show = lone_pieces();
  JointSettings settings;
  settings.signing = false;
  settings.equal_makers = true;
  settings.learn_density = false;
  const auto fit =
      fit_joint(show, settings, {.keep = 6000, .judge_each = 1, .seed = 5}, Watch{});
  REQUIRE(fit);
  const Twin twin = enumerated(show);
  // 24,000 rounds, at worst a quarter of them worth a draw: five standard errors are 0.03.
  for (std::size_t t = 0; t < years; ++t) {
    CHECK(std::abs(fit->spans[0].start_p[t] - twin.start[t]) < 0.03);
    CHECK(std::abs(fit->spans[0].end_p[t] - twin.end[t]) < 0.03);
  }
  for (std::size_t i = 0; i < show.pieces.size(); ++i) {
    CHECK(std::abs(fit->pieces[i].maker[0] - twin.unlisted[i]) < 0.03);
  }
}
