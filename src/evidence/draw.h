// Draws that several steps of the sampler share.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/random.h"

namespace backmark::evidence {

// An index with probability proportional to exp(log_p), which may hold -infinity; the last one
// if nothing is possible.
inline std::size_t draw_log(std::vector<double> log_p, Random& random) {
  const double top = *std::max_element(log_p.begin(), log_p.end());
  for (double& x : log_p) {
    x = std::exp(x - top);
  }
  return random.weighted(log_p);
}

}  // namespace backmark::evidence
