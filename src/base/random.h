// Chance from a seed: the same seed gives the same numbers on every machine and thread count.
#pragma once

#include <cstdint>
#include <random>
#include <vector>

namespace backmark {

// Draws from a 64-bit Mersenne twister (its output is fixed by the C++ standard; the standard's
// distributions are not, so the distributions are ours).
class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}

  // A separate stream for part `index` of a job, so that work can be split over threads.
  static Random stream(std::uint64_t seed, std::uint64_t index);

  std::uint64_t bits() { return engine_(); }
  // In [0, 1).
  double uniform() { return static_cast<double>(engine_() >> 11) * 0x1.0p-53; }
  // A whole number in [0, n); n > 0.
  std::size_t below(std::size_t n) {
    return static_cast<std::size_t>(uniform() * static_cast<double>(n));
  }
  bool chance(double p) { return uniform() < p; }
  // Mean 0, standard deviation 1.
  double normal();
  // Mean 1.
  double exponential();
  // Shape > 0, scale 1 (Marsaglia and Tsang 2000, "A simple method for generating gamma
  // variables").
  double gamma(double shape);
  // An index with probability proportional to weights (non-negative, not all zero).
  std::size_t weighted(const std::vector<double>& weights);

  template <class T>
  void shuffle(std::vector<T>& items) {
    for (std::size_t i = items.size(); i > 1; --i) {
      std::swap(items[i - 1], items[below(i)]);
    }
  }

 private:
  std::mt19937_64 engine_;
  double spare_ = 0;
  bool has_spare_ = false;
};

}  // namespace backmark
