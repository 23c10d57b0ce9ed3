// Several lines of evidence about one year, weighed together.
#pragma once

#include <vector>

#include "base/result.h"
#include "evidence/watch.h"
#include "evidence/year_grid.h"

namespace backmark::evidence {

// A piece whose years are known, with its lines as they stand without its own lot.
struct StackTarget {
  std::vector<float>
      lines;  // lines x bins: natural logs, any constant; 0 where nothing is said
  YearSpan stated;
  double judged = 1;  // weight in the score
};

struct StackTask {
  YearGrid bins;
  std::vector<StackTarget> targets;
  std::vector<double> prior;  // of each line's weight
  // The first `scaled` priors are multiplied by one scale s, learned with the rest: how far the
  // characters of this show may be taken as independent.
  std::size_t scaled = 0;
  double ridge = 10;       // ridge / 2 * (b - s prior)^2
  double ridge_scale = 1;  // ridge_scale / 2 * (log s)^2
};

// Minus the weighted log mass on the stated spans under
//     log p(t) = sum_l b_l line_l(t) + const
// plus the ridges; writes its slope. `b`: one a line; with a scale, log s is the last.
double stack_score(const StackTask& task,
                   const Watch& watch,
                   const std::vector<double>& b,
                   std::vector<double>& slope);

struct StackFit {
  std::vector<double> b;  // one a line
  double score = 0;
};

// The b >= 0 with the least score. Problems: stopped.
Result<StackFit> fit_stack(const StackTask& task, const Watch& watch);

// p(t) over as many cells as a line has; `lines` may hold empty ones (nothing said).
std::vector<double> stacked(const std::vector<double>& b,
                            const std::vector<std::vector<double>>& lines,
                            std::size_t cells);

}  // namespace backmark::evidence
