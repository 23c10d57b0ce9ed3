// The lowest point of a smooth function of a few numbers.
#pragma once

#include <functional>
#include <vector>

namespace backmark::evidence {

// Gives the value at x and writes the slope along each coordinate.
using Smooth = std::function<double(const std::vector<double>& x, std::vector<double>& slope)>;

struct Descent {
  std::vector<double> lowest;  // lower limit of each coordinate; empty: none
  int most_steps = 200;        // evaluations
  double enough = 1e-6;        // stop when the value changes by less than this share
};

// Limited-memory BFGS (Nocedal 1980, "Updating quasi-Newton matrices with limited storage"), as
// the library NLopt carries it, with limits kept by projection. Starts at `x` and gives the
// best point met. Deterministic.
std::vector<double> minimise(const Smooth& smooth,
                             std::vector<double> x,
                             const Descent& descent);

}  // namespace backmark::evidence
