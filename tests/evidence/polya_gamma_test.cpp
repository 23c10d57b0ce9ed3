#include "evidence/polya_gamma.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace backmark;
using namespace backmark::evidence;

TEST_CASE("Polya-Gamma draws have the published mean and variance") {
  // Polson, Scott and Windle (arXiv 1205.0310), section 2: mean b/(2c) tanh(c/2);
  // variance b/(4 c^3) (sinh c - c) / cosh^2(c/2).
  Random random(3);
  for (const double tilt : {0.05, 0.8, -2.5, 6.0}) {
    for (const int trials : {1, 3}) {
      const int n = 40000;
      double sum = 0;
      double squares = 0;
      for (int i = 0; i < n; ++i) {
        const double x = draw_polya_gamma(trials, tilt, random);
        sum += x;
        squares += x * x;
      }
      const double c = std::abs(tilt);
      const double mean = trials / (2 * c) * std::tanh(c / 2);
      const double variance =
          trials / (4 * c * c * c) * (std::sinh(c) - c) / std::pow(std::cosh(c / 2), 2);
      const double got = sum / n;
      CHECK(std::abs(got - mean) < 5 * std::sqrt(variance / n));
      CHECK(squares / n - got * got == doctest::Approx(variance).epsilon(0.08));
    }
  }
  CHECK(draw_polya_gamma(0, 1.0, random) == 0);
}

TEST_CASE("Polya-Gamma draws have the published Laplace transform") {
  // E exp(-omega s) for PG(1, c) = cosh(c/2) / cosh(sqrt((c^2/2 + s) / 2)).
  Random random(4);
  const double c = 1.3;
  const double s = 2.0;
  double sum = 0;
  const int n = 60000;
  for (int i = 0; i < n; ++i) {
    sum += std::exp(-s * draw_polya_gamma(1, c, random));
  }
  const double known = std::cosh(c / 2) / std::cosh(std::sqrt((c * c / 2 + s) / 2));
  CHECK(sum / n == doctest::Approx(known).epsilon(0.003));
}
