// Whether chains of a sampler agree, and how many independent draws they are worth.
//
// Vehtari, Gelman, Simpson, Carpenter and Buerkner, "Rank-normalization, folding, and
// localization: an improved R-hat" (arXiv 1903.08008): chains are split in halves, draws
// replaced by normal scores of their ranks over all chains; R-hat is the larger of that of the
// scores and of the scores of the distance from the median. Effective draws by Geyer's initial
// monotone sequence over all chains.
#pragma once

#include <vector>

namespace backmark::evidence {

// One row a chain, all of one length of at least 4 draws; an odd last draw is left out by
// splitting.
using Chains = std::vector<std::vector<double>>;

// 1 is agreement; above 1.01 the chains should run longer. Constant draws everywhere: 1. Chains
// stuck at different constants: infinity.
double rank_rhat(const Chains& chains);

// Effective draws for the middle of the distribution (of the normal scores), and for the 5 %
// and 95 % quantiles (the smaller). At most draws x log10(draws). Constant draws: all of them
// count.
double bulk_ess(const Chains& chains);
double tail_ess(const Chains& chains);

// Effective draws for the mean of the raw draws.
double mean_ess(const Chains& chains);

// Standard error of the mean by batches: `batches` a chain. It sees slow parts of a chain that
// a spectral estimate misses.
double batch_mean_error(const Chains& chains, int batches);

// How a whole run stands: many quantities are never all below a limit by chance alone, so
// shares are said.
struct Convergence {
  std::size_t quantities = 0;
  double rhat_max = 1;
  double rhat_good_share = 1;  // share with R-hat below 1.01
  double ess_min = 0;          // smallest of bulk and tail; 0 without quantities
  double ess_mean = 0;         // of the bulk
  double ess_good_share = 1;   // share with bulk and tail above 400
};

Convergence judge_convergence(const std::vector<Chains>& quantities);

// Several judgements of different quantities as one.
Convergence joined(const std::vector<Convergence>& parts);

}  // namespace backmark::evidence
