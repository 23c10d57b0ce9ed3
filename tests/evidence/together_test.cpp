#include "evidence/together.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <numeric>

#include "base/random.h"

using namespace backmark;
using namespace backmark::evidence;

TEST_CASE("the normal's quantile undoes its distribution") {
  // From tables: Phi(1.959964) = 0.975.
  CHECK(normal_below(1.959964) == doctest::Approx(0.975).epsilon(1e-6));
  for (const double p : {1e-6, 0.01, 0.3, 0.5, 0.77, 0.999}) {
    CHECK(normal_below(normal_quantile(p)) == doctest::Approx(p).epsilon(1e-7));
  }
}

TEST_CASE("at least one of two halves: three in four, and less when they lean together") {
  CHECK(any_of({0.5, 0.5}, 0) == doctest::Approx(0.75));
  // Sheppard 1899: two normals with correlation r are both below 0 with 1/4 + asin(r) / (2 pi).
  for (const double r : {0.2, 0.5, 0.9}) {
    const double both_miss = 0.25 + std::asin(r) / (2 * 3.14159265358979);
    CHECK(any_of({0.5, 0.5}, r) == doctest::Approx(1 - both_miss).epsilon(1e-5));
  }
}

TEST_CASE("leaning keeps each chance, and lies between independence and one chance for all") {
  CHECK(any_of({0.3}, 0.4) == doctest::Approx(0.3).epsilon(1e-6));
  Random random(1);
  for (int round = 0; round < 20; ++round) {
    std::vector<double> p;
    for (int i = 0; i < 6; ++i) {
      p.push_back(random.uniform());
    }
    const double free = any_of(p, 0);
    const double leaning = any_of(p, 0.3);
    CHECK(leaning <= free + 1e-9);
    CHECK(leaning >= *std::max_element(p.begin(), p.end()) - 1e-9);
    CHECK(any_of(p, 0.6) <= leaning + 1e-9);
  }
}

TEST_CASE("one chance exchanged is all of them reckoned anew") {
  Random random(2);
  std::vector<double> p{0, 1, 0.4};
  for (int i = 0; i < 6; ++i) {
    p.push_back(random.uniform());
  }
  const AnyOf all(p, 0.3);
  CHECK(all.chance() == 1);
  for (std::size_t i = 0; i < p.size(); ++i) {
    for (const double instead : {0.0, 1e-9, 0.35, 0.999, 1.0}) {
      std::vector<double> anew = p;
      anew[i] = instead;
      CHECK(all.with(i, instead) == doctest::Approx(any_of(anew, 0.3)).epsilon(1e-9));
    }
  }
}

TEST_CASE("a race of two, worked by hand") {
  // One is of year 0 or 1, the other of year 1. In year 1 they share: 1/2 + 1/2 * 1/2.
  const std::vector<double> early{0.5, 0.5};
  const std::vector<double> late{0, 1};
  const auto chance = chance_oldest({{&early, 1}, {&late, 0}});
  CHECK(chance[0] == doctest::Approx(0.75));
  CHECK(chance[1] == doctest::Approx(0.25));
  CHECK(oldest_is_by({{&early, 0.8}, {&late, 0.4}}) ==
        doctest::Approx(0.75 * 0.8 + 0.25 * 0.4));
}

TEST_CASE("the race by formula and by drawing agree") {
  Random random(3);
  std::vector<std::vector<double>> years(8, std::vector<double>(30));
  std::vector<Racer> racers;
  for (auto& p : years) {
    for (double& one : p) {
      one = std::pow(random.uniform(), 6);
    }
    const double sum = std::accumulate(p.begin(), p.end(), 0.0);
    for (double& one : p) {
      one /= sum;
    }
    racers.push_back({&p, random.uniform()});
  }
  const auto chance = chance_oldest(racers);
  CHECK(std::accumulate(chance.begin(), chance.end(), 0.0) == doctest::Approx(1));
  // 40,000 draws: a standard error of at most 0.0025.
  CHECK(std::abs(oldest_is_by(racers) - oldest_is_by(racers, 0, 40000, 1)) < 0.01);
}
