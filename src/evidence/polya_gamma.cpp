#include "evidence/polya_gamma.h"

#include <cmath>

namespace backmark::evidence {
namespace {

constexpr double pi = 3.14159265358979323846;
// Where the proposal changes from inverse Gaussian to exponential.
constexpr double cut = 0.64;

double normal_cdf(double x) {
  return 0.5 * std::erfc(-x / std::sqrt(2.0));
}

// n-th coefficient of the alternating series of the Jacobi density at x.
double coefficient(int n, double x) {
  const double k = n + 0.5;
  if (x > cut) {
    return pi * k * std::exp(-0.5 * k * k * pi * pi * x);
  }
  const double spread = 2 / (pi * x);
  return spread * std::sqrt(spread) * pi * k * std::exp(-2 * k * k / x);
}

// Inverse Gaussian with mean 1/z and shape 1, cut to (0, cut).
double cut_inverse_gaussian(double z, Random& random) {
  if (z < 1 / cut) {
    while (true) {
      double e = 0;
      double f = 0;
      do {
        e = random.exponential();
        f = random.exponential();
      } while (e * e > 2 * f / cut);
      const double x = cut / ((1 + cut * e) * (1 + cut * e));
      if (random.uniform() < std::exp(-0.5 * z * z * x)) {
        return x;
      }
    }
  }
  const double mean = 1 / z;
  while (true) {
    const double n = random.normal();
    const double y = n * n;
    double x = mean + 0.5 * mean * mean * y -
               0.5 * mean * std::sqrt(4 * mean * y + mean * mean * y * y);
    if (random.uniform() > mean / (mean + x)) {
      x = mean * mean / x;
    }
    if (x < cut) {
      return x;
    }
  }
}

// What all draws with one tilt share.
struct Proposal {
  double z;
  double rate;
  double tail_share;
};

Proposal proposal_for(double tilt) {
  const double z = 0.5 * std::abs(tilt);
  const double rate = pi * pi / 8 + 0.5 * z * z;
  const double tail = pi / (2 * rate) * std::exp(-rate * cut);
  const double root = std::sqrt(1 / cut);
  const double body = 2 * (std::exp(-z) * normal_cdf(root * (cut * z - 1)) +
                           std::exp(z) * normal_cdf(-root * (cut * z + 1)));
  return {z, rate, tail / (tail + body)};
}

double draw_one(const Proposal& proposal, Random& random) {
  while (true) {
    const double x = random.uniform() < proposal.tail_share
                         ? cut + random.exponential() / proposal.rate
                         : cut_inverse_gaussian(proposal.z, random);
    double sum = coefficient(0, x);
    const double mark = random.uniform() * sum;
    for (int n = 1;; ++n) {
      if (n % 2 == 1) {
        sum -= coefficient(n, x);
        if (mark <= sum) {
          return 0.25 * x;
        }
      } else {
        sum += coefficient(n, x);
        if (mark > sum) {
          break;
        }
      }
    }
  }
}

}  // namespace

double draw_polya_gamma(int trials, double tilt, Random& random) {
  if (trials <= 0) {
    return 0;
  }
  const Proposal proposal = proposal_for(tilt);
  double sum = 0;
  for (int i = 0; i < trials; ++i) {
    sum += draw_one(proposal, random);
  }
  return sum;
}

}  // namespace backmark::evidence
