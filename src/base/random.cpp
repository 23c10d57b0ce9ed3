#include "base/random.h"

#include <cmath>

namespace backmark {

Random Random::stream(std::uint64_t seed, std::uint64_t index) {
  // Two rounds of the splitmix64 finaliser keep neighbouring streams apart (Steele, Lea and
  // Flood 2014, "Fast splittable pseudorandom number generators").
  std::uint64_t z = seed + 0x9e3779b97f4a7c15ULL * (index + 1);
  for (int round = 0; round < 2; ++round) {
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
    z ^= z >> 31;
  }
  return Random(z);
}

double Random::normal() {
  if (has_spare_) {
    has_spare_ = false;
    return spare_;
  }
  double u = 0;
  double v = 0;
  double s = 0;
  do {
    u = 2 * uniform() - 1;
    v = 2 * uniform() - 1;
    s = u * u + v * v;
  } while (s >= 1 || s == 0);
  const double factor = std::sqrt(-2 * std::log(s) / s);
  spare_ = v * factor;
  has_spare_ = true;
  return u * factor;
}

double Random::exponential() {
  return -std::log(1 - uniform());
}

double Random::gamma(double shape) {
  if (shape < 1) {
    const double boost = std::pow(1 - uniform(), 1 / shape);
    return gamma(shape + 1) * boost;
  }
  const double d = shape - 1.0 / 3;
  const double c = 1 / std::sqrt(9 * d);
  while (true) {
    const double x = normal();
    const double t = 1 + c * x;
    if (t <= 0) {
      continue;
    }
    const double v = t * t * t;
    if (std::log(1 - uniform()) < 0.5 * x * x + d - d * v + d * std::log(v)) {
      return d * v;
    }
  }
}

std::size_t Random::weighted(const std::vector<double>& weights) {
  double total = 0;
  for (const double w : weights) {
    total += w;
  }
  double mark = uniform() * total;
  std::size_t last = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    if (weights[i] <= 0) {
      continue;
    }
    last = i;
    mark -= weights[i];
    if (mark < 0) {
      return i;
    }
  }
  return last;
}

}  // namespace backmark
