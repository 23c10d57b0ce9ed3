#include "evidence/convergence.h"

#include <cmath>
#include <doctest/doctest.h>

#include "base/random.h"
#include "base/result.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

// Stationary AR(1): its mean is worth n (1 - a) / (1 + a) draws (any text on time series).
Chains autoregressive(double a, int chains, int draws, std::uint64_t seed) {
  Chains all;
  for (int c = 0; c < chains; ++c) {
    Random random = Random::stream(seed, static_cast<std::uint64_t>(c));
    double x = random.normal();
    std::vector<double> chain;
    for (int i = 0; i < draws; ++i) {
      chain.push_back(x);
      x = a * x + std::sqrt(1 - a * a) * random.normal();
    }
    all.push_back(chain);
  }
  return all;
}

}  // namespace

TEST_CASE("independent draws agree and all count") {
  const Chains chains = autoregressive(0, 4, 1000, 1);
  CHECK(rank_rhat(chains) < 1.005);
  CHECK(bulk_ess(chains) == doctest::Approx(4000).epsilon(0.1));
  CHECK(tail_ess(chains) == doctest::Approx(4000).epsilon(0.2));
}

TEST_CASE("a slow chain is worth n (1 - a) / (1 + a) draws") {
  for (const double a : {0.3, 0.6, 0.9, -0.4}) {
    const Chains chains = autoregressive(a, 4, 20000, 2);
    CHECK(mean_ess(chains) == doctest::Approx(80000 * (1 - a) / (1 + a)).epsilon(0.12));
    CHECK(bulk_ess(chains) == doctest::Approx(80000 * (1 - a) / (1 + a)).epsilon(0.12));
  }
}

TEST_CASE("the batch error is the known error of an AR(1) mean") {
  const double a = 0.8;
  const Chains chains = autoregressive(a, 8, 40000, 3);
  const double known = std::sqrt((1 + a) / (1 - a) / (8 * 40000.0));
  CHECK(batch_mean_error(chains, 20) == doctest::Approx(known).epsilon(0.25));
}

TEST_CASE("a chain that sits elsewhere is noticed") {
  Chains chains = autoregressive(0, 4, 500, 4);
  for (double& x : chains[2]) {
    x += 1;
  }
  CHECK(rank_rhat(chains) > 1.05);
}

TEST_CASE("chains of one centre and different width are noticed by folding alone") {
  Chains chains = autoregressive(0, 4, 500, 5);
  for (double& x : chains[1]) {
    x *= 4;
  }
  CHECK(rank_rhat(chains) > 1.05);
}

TEST_CASE("a drifting chain is noticed by splitting, and heavy tails are no trouble") {
  Chains chains = autoregressive(0, 2, 500, 6);
  for (auto& chain : chains) {
    for (std::size_t i = 0; i < chain.size(); ++i) {
      chain[i] += 2.0 * static_cast<double>(i) / 500;
    }
  }
  CHECK(rank_rhat(chains) > 1.1);
  Chains cauchy = autoregressive(0, 4, 1000, 7);
  const Chains below = autoregressive(0, 4, 1000, 8);
  for (std::size_t c = 0; c < 4; ++c) {
    for (std::size_t i = 0; i < 1000; ++i) {
      cauchy[c][i] /= below[c][i];
    }
  }
  CHECK(rank_rhat(cauchy) < 1.01);
  CHECK(bulk_ess(cauchy) > 3000);
}

TEST_CASE("ranks do not care for the scale: any rising map leaves R-hat and bulk draws alone") {
  const Chains chains = autoregressive(0.5, 4, 400, 9);
  Chains mapped = chains;
  for (auto& chain : mapped) {
    for (double& x : chain) {
      x = std::exp(x);
    }
  }
  CHECK(bulk_ess(mapped) == doctest::Approx(bulk_ess(chains)).epsilon(1e-9));
}

TEST_CASE("constants agree, stuck chains do not, and too few draws are a broken promise") {
  CHECK(rank_rhat({{3, 3, 3, 3}, {3, 3, 3, 3}}) == 1);
  CHECK(bulk_ess({{3, 3, 3, 3}, {3, 3, 3, 3}}) == 8);
  CHECK(std::isinf(rank_rhat({{1, 1, 1, 1}, {2, 2, 2, 2}})));
  CHECK_THROWS_AS(rank_rhat({{1, 2, 3}}), BrokenPromise);
  CHECK_THROWS_AS(rank_rhat({{1, 2, 3, 4}, {1, 2, 3, 4, 5}}), BrokenPromise);
}

TEST_CASE("a run is judged by shares and by its worst") {
  std::vector<Chains> run;
  for (std::uint64_t i = 0; i < 9; ++i) {
    run.push_back(autoregressive(0, 4, 500, 20 + i));
  }
  run.push_back({std::vector<double>(500, 1), std::vector<double>(500, 2),
                 std::vector<double>(500, 1), std::vector<double>(500, 2)});
  const Convergence all = judge_convergence(run);
  CHECK(all.quantities == 10);
  CHECK(all.rhat_good_share == doctest::Approx(0.9));
  CHECK(std::isinf(all.rhat_max));
  CHECK(judge_convergence({}).quantities == 0);
}
