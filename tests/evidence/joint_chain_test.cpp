#include "evidence/joint_chain.h"

#include <algorithm>
#include <doctest/doctest.h>

#include "rank_test_show.h"

using namespace backmark;
using namespace backmark::evidence;

TEST_SUITE("slow") {
  TEST_CASE("ranks of the truth among the draws are uniform") {
    const RankPlan plan{100, 200, 10, 99, 10};
    const auto results = rank_test(plan, small_plan(), small_settings(), small_settings(), 11);
    for (const RankResult& result : results) {
      INFO(result.name, ": p ", result.p, ", lean ", result.lean_z);
      CHECK(result.p > 0.05 / static_cast<double>(results.size()));
    }
  }
}
