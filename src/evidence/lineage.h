// Ordered variants of a mark: when each gave way to the next.
//
// V variants in order, change years b_1 <= ... <= b_{V-1} (offsets in the grid; prior: all
// ordered sets alike). Around a change both are in use, over a linear ramp of half-width d:
//     p(variant j | t) = G(t - b_j) - G(t - b_{j+1}),   b_0 = -infinity, b_V = +infinity,
//     G(x) = (x + d + 1) / (2d + 1) cut to 0..1        (d = 0: the new variant from b_j on).
// Given dated pieces all change years are drawn jointly and exactly: forward sums, backward
// draws.
#pragma once

#include <vector>

#include "base/random.h"

namespace backmark::evidence {

struct LineageState {
  std::vector<int> change;  // V - 1 offsets, ascending
  int overlap = 0;          // d, years
};

// p(variant | t) for each variant (row) and year (column).
std::vector<std::vector<double>> variant_curves(const LineageState& state, int years);

// How many pieces show each variant (row) in each year (column).
using VariantCounts = std::vector<std::vector<int>>;

// ln of the evidence of the counts, change years summed out, for overlap d. -infinity if
// impossible.
double lineage_evidence(const VariantCounts& counts, int overlap);

// Draws overlap (equal prior over `overlaps`) and change years given the counts.
LineageState draw_lineage(const VariantCounts& counts,
                          const std::vector<int>& overlaps,
                          Random& random);

// Draws from the prior.
LineageState draw_lineage_prior(int variants,
                                int years,
                                const std::vector<int>& overlaps,
                                Random& random);

}  // namespace backmark::evidence
