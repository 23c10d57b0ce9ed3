#include "evidence/calibrate.h"

#include <cmath>
#include <doctest/doctest.h>

#include "base/random.h"
#include "base/text.h"

using namespace backmark;
using namespace backmark::evidence;
using model::Trust;

namespace {

constexpr YearSpan axis{{1900}, {1999}};

std::vector<double> bell(double middle, double sd) {
  std::vector<double> p;
  double sum = 0;
  for (int t = 0; t < axis.length(); ++t) {
    p.push_back(std::exp(-0.5 * std::pow((t - middle) / sd, 2)) + 1e-9);
    sum += p.back();
  }
  for (double& value : p) {
    value /= sum;
  }
  return p;
}

// Truth drawn from a bell of sd 6; the forecaster says a bell of `said_sd`, `late` years late.
std::vector<YearTrial> forecasts(int count, double said_sd, double late, std::uint64_t seed) {
  Random random(seed);
  std::vector<YearTrial> trials;
  for (int i = 0; i < count; ++i) {
    const double middle = 25 + 50 * random.uniform();
    const auto truth = static_cast<int>(random.weighted(bell(middle, 6)));
    YearTrial trial{.axis = axis,
                    .p = bell(middle + late, said_sd),
                    .stated = {axis.first + truth, axis.first + truth},
                    .lot = i,
                    .groups = {}};
    trials.push_back(std::move(trial));
  }
  return trials;
}

// First names said at `said`, right with `right`, among four makers.
std::vector<MakerTrial> names(int count, double said, double right, std::uint64_t seed) {
  Random random(seed);
  std::vector<MakerTrial> trials;
  for (int i = 0; i < count; ++i) {
    const double rest = (1 - said) / 3;
    MakerTrial trial{.named = {{0, said}, {1, rest}, {2, rest}, {3, rest}},
                     .truth = random.chance(right) ? 0 : 1 + static_cast<int>(random.below(3)),
                     .listed = true,
                     .listed_p = 0.5,
                     .lot = i};
    trials.push_back(std::move(trial));
  }
  return trials;
}

}  // namespace

TEST_CASE("four years of even chances, worked by hand") {
  const YearSpan four{{1950}, {1953}};
  const YearTrial trial{
      .axis = four, .p = {0.25, 0.25, 0.25, 0.25}, .stated = {{1950}, {1950}}, .groups = {}};
  // The central half runs from rank 0.25 to 0.75; 1950 holds 0 to 0.25: none of it.
  CHECK(covered(trial, 0.5) == doctest::Approx(0));
  // The central 0.8 runs from 0.1: 0.15 of the year's 0.25.
  CHECK(covered(trial, 0.8) == doctest::Approx(0.6));
  // A span of two years, 1950 and 1951: (0 + 1) / 2, and (0.6 + 1) / 2.
  const YearTrial span{
      .axis = four, .p = {0.25, 0.25, 0.25, 0.25}, .stated = {{1950}, {1951}}, .groups = {}};
  CHECK(covered(span, 0.5) == doctest::Approx(0.5));
  CHECK(covered(span, 0.8) == doctest::Approx(0.8));
  // ln of 0.25 and of 0.5.
  const auto scored = score_years({trial, span});
  CHECK(scored.log_score == doctest::Approx((std::log(0.25) + std::log(0.5)) / 2));
}

TEST_CASE("a year outside the axis is missed") {
  const YearTrial trial{
      .axis = {{1950}, {1951}}, .p = {0.5, 0.5}, .stated = {{1952}, {1953}}, .groups = {}};
  CHECK(covered(trial, 0.95) == 0);
  CHECK(score_years({trial}).log_score == doctest::Approx(std::log(1e-6)));
}

TEST_CASE("Wilson's interval is the published one, and lots count as Kish has it") {
  // Wilson 1927; 95 % for 8 of 10 is 0.490 to 0.943 (Brown, Cai and DasGupta 2001, formula 4).
  const auto seen = wilson(0.8, 10, 1.959964);
  CHECK(seen.low == doctest::Approx(0.4902).epsilon(0.001));
  CHECK(seen.high == doctest::Approx(0.9433).epsilon(0.001));
  CHECK(effective_lots({1, 2, 3, 4}) == doctest::Approx(4));
  // Six pieces, four of them one set: 36 / (16 + 1 + 1).
  CHECK(effective_lots({1, 1, 1, 1, 2, 3}) == doctest::Approx(2));
}

TEST_CASE("a perfect forecaster is trusted") {
  int trusted = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    trusted += score_years(forecasts(200, 6, 0, seed)).trust == Trust::trusted ? 1 : 0;
  }
  // The rule blames honest odds less than once in thirty.
  CHECK(trusted >= 38);
}

TEST_CASE("an overconfident forecaster is caught, and so is a timid and a late one") {
  int sure = 0;
  int timid = 0;
  int late = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    sure += score_years(forecasts(200, 3, 0, seed)).trust == Trust::too_sure ? 1 : 0;
    timid += score_years(forecasts(200, 12, 0, seed)).trust == Trust::too_cautious ? 1 : 0;
    late += score_years(forecasts(200, 6, 9, seed)).trust == Trust::too_sure ? 1 : 0;
  }
  CHECK(sure == 40);
  CHECK(timid == 40);
  CHECK(late == 40);
}

TEST_CASE("ranks of a perfect forecaster are even, of a late one heaped up early") {
  const auto fair = score_years(forecasts(4000, 6, 0, 1)).ranks;
  for (const double cell : fair) {
    CHECK(cell == doctest::Approx(0.1).epsilon(0.2));
  }
  CHECK(score_years(forecasts(400, 6, 9, 1)).ranks.front() > 0.4);
}

TEST_CASE("too few pieces, or few lots, say nothing") {
  CHECK(score_years(forecasts(19, 6, 0, 1)).trust == Trust::too_few);
  auto one_set = forecasts(200, 3, 0, 1);
  for (YearTrial& trial : one_set) {
    trial.lot = 1;
  }
  CHECK(score_years(one_set).trust == Trust::too_few);
  CHECK(contains(verdict(score_years(one_set)), "Too few to tell"));
  CHECK(score_years({}).pieces == 0);
}

TEST_CASE("names: two right of three, worked by hand") {
  auto trials = names(3, 0.7, 1, 1);
  trials[2].truth = 2;
  const auto makers = score_makers(trials);
  CHECK(makers.top_1 == doctest::Approx(2.0 / 3));
  CHECK(makers.top_3 == doctest::Approx(1));
  CHECK(makers.log_loss == doctest::Approx(-(2 * std::log(0.7) + std::log(0.1)) / 3));
  CHECK(makers.calibration_error == doctest::Approx(0.7 - 2.0 / 3));
  CHECK(makers.trust == Trust::too_few);
}

TEST_CASE("a set by one hand counts once") {
  auto trials = names(4, 0.7, 1, 1);
  for (MakerTrial& trial : trials) {
    trial.lot = 1;
  }
  trials[3].lot = 2;
  trials[3].truth = 2;
  const auto makers = score_makers(trials);
  CHECK(makers.groups == 2);
  CHECK(makers.top_1 == doctest::Approx(0.5));
}

TEST_CASE("honest names are trusted, boastful ones caught") {
  int honest = 0;
  int boastful = 0;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    honest += score_makers(names(100, 0.7, 0.7, seed)).trust == Trust::trusted ? 1 : 0;
    boastful += score_makers(names(100, 0.9, 0.6, seed)).trust == Trust::too_sure ? 1 : 0;
  }
  CHECK(honest >= 19);
  CHECK(boastful == 20);
}

TEST_CASE("on the list or not: the area is the share of pairs in order") {
  std::vector<MakerTrial> trials = names(3, 0.7, 1, 1);
  trials[0].listed_p = 0.9;
  trials[1].listed_p = 0.4;
  trials[2].listed_p = 0.4;
  trials[2].listed = false;
  // One pair in order, one tied: 1.5 of 2.
  CHECK(score_makers(trials).listed_auc == doctest::Approx(0.75));
}
