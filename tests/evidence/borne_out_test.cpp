#include "evidence/borne_out.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace backmark;
using evidence::share_true;

// A Beta prior of strength 4 and n sayings that are plainly true (or plainly empty) is
// conjugate: the mean is (4 r + n) / (4 + n), or 4 r / (4 + n).
TEST_CASE("sayings plainly borne out, or plainly not, count as they do for a Beta prior") {
  const double plainly = std::log(1e7);
  for (const double r : {0.3, 0.6, 0.8}) {
    CHECK(share_true(r, {}) == doctest::Approx(r).epsilon(0.01));
    for (const std::size_t n : {1U, 5U, 20U}) {
      const auto count = static_cast<double>(n);
      CHECK(share_true(r, std::vector<double>(n, plainly)) ==
            doctest::Approx((4 * r + count) / (4 + count)).epsilon(0.01));
      CHECK(share_true(r, std::vector<double>(n, -plainly)) ==
            doctest::Approx(4 * r / (4 + count)).epsilon(0.01));
    }
  }
}

TEST_CASE("a saying that fits as well as empty talk says nothing of its source") {
  CHECK(share_true(0.7, std::vector<double>(30, 0.0)) == doctest::Approx(0.7).epsilon(0.01));
}
