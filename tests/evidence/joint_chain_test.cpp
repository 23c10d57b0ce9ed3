#include "evidence/joint_chain.h"

#include <algorithm>
#include <doctest/doctest.h>

#include "rank_test_show.h"

using namespace backmark;
using namespace backmark::evidence;

TEST_SUITE("slow") {
  TEST_CASE("ranks of the truth among the draws are uniform") {
    const RankPlan plan{60, 200, 8, 99, 10};
    const auto results = rank_test(plan, small_plan(), small_settings(), small_settings(), 11);
    for (const RankResult& result : results) {
      INFO(result.name, ": p ", result.p, ", lean ", result.lean_z);
      CHECK(result.p > 0.05 / static_cast<double>(results.size()));
    }
  }

  TEST_CASE("a sampler with a planted fault does not pass the same test") {
    const RankPlan plan{50, 150, 8, 49, 10};
    for (const SamplerFault fault : {SamplerFault::length_dropped, SamplerFault::stale_tables,
                                     SamplerFault::own_year_base}) {
      JointSettings broken = small_settings();
      broken.fault = fault;
      const auto results = rank_test(plan, small_plan(), small_settings(), broken, 12);
      const auto worst =
          std::min_element(results.begin(), results.end(),
                           [](const RankResult& a, const RankResult& b) { return a.p < b.p; });
      INFO("fault ", static_cast<int>(fault), ", worst ", worst->name, ": p ", worst->p);
      CHECK(worst->p < 0.05 / static_cast<double>(results.size()));
    }
  }
}
