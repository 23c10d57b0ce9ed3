#include "base/random.h"

#include <cmath>
#include <doctest/doctest.h>

using backmark::Random;

TEST_CASE("the same seed gives the same numbers, another stream gives others") {
  Random a(7);
  Random b(7);
  CHECK(a.bits() == b.bits());
  CHECK(Random::stream(7, 0).bits() != Random::stream(7, 1).bits());
}

TEST_CASE("the engine is the 64-bit Mersenne twister of the C++ standard") {
  // ISO C++ [rand.predef]: the 10000th draw of a default mt19937_64 (seed 5489).
  Random random(5489);
  std::uint64_t last = 0;
  for (int i = 0; i < 10000; ++i) {
    last = random.bits();
  }
  CHECK(last == 9981545732273789042ULL);
}

TEST_CASE("normal and gamma draws have the moments that their definitions give") {
  Random random(11);
  const int n = 200000;
  double sum = 0;
  double squares = 0;
  double gamma_sum = 0;
  double gamma_small = 0;
  for (int i = 0; i < n; ++i) {
    const double x = random.normal();
    sum += x;
    squares += x * x;
    gamma_sum += random.gamma(2.5);
    gamma_small += random.gamma(0.3);
  }
  // Five standard errors: a fault moves these far further.
  CHECK(std::abs(sum / n) < 5 / std::sqrt(n));
  CHECK(std::abs(squares / n - 1) < 5 * std::sqrt(2.0 / n));
  CHECK(std::abs(gamma_sum / n - 2.5) < 5 * std::sqrt(2.5 / n));
  CHECK(std::abs(gamma_small / n - 0.3) < 5 * std::sqrt(0.3 / n));
}
