#include "reduced_model.h"

#include <doctest/doctest.h>

using namespace backmark;
using namespace backmark::evidence;

TEST_SUITE("slow") {
  TEST_CASE("the sampler gives the exact answer of a model small enough to sum out") {
    for (const ReducedPlan& plan : {case_a(), case_b()}) {
      const Reduced reduced = make_reduced(plan);
      const Means exact = exact_means(reduced, 300000, 3);
      REQUIRE(exact.effective > 300);
      const ChainRun run = run_chains(reduced, 4, 4000, 5);
      for (const Chains& chains : run.draws) {
        CHECK(rank_rhat(chains) < 1.01);
      }
      for (const auto& means : {means_of(run.draws), means_of(run.answers)}) {
        const Agreed agreed = agreement(means, exact);
        INFO("pieces ", plan.pieces, ": sd of z ", agreed.sd, ", worst ", agreed.worst);
        CHECK(agreed.sd < 1.4);
        CHECK(agreed.worst < 4);
      }
    }
  }

  TEST_CASE("JAGS, told the same model in its own words, gives the same answer") {
    if (!jags_is_here()) {
      MESSAGE("skipped: jags is not installed");
      return;
    }
    const Reduced reduced = make_reduced(case_a());
    double seconds = 0;
    const auto theirs = jags_draws(reduced, 4000, seconds);
    REQUIRE_FALSE(theirs.empty());
    REQUIRE(theirs.front().front().size() == 400);
    const Agreed agreed =
        agreement(means_of(theirs), means_of(chain_draws(reduced, 4, 4000, 5)));
    INFO("sd of z ", agreed.sd, ", worst ", agreed.worst);
    // Its habit shares need some two hundred sweeps for one effective draw, so the errors of a
    // run of this length are understated: more is allowed than against the exact answer.
    CHECK(agreed.sd < 2.2);
    CHECK(agreed.worst < 4.5);
  }
}
