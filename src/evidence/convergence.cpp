#include "evidence/convergence.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "base/result.h"

namespace backmark::evidence {
namespace {

Chains split_in_halves(const Chains& chains) {
  Chains halves;
  for (const auto& chain : chains) {
    if (chain.size() < 4 || chain.size() != chains.front().size()) {
      throw BrokenPromise("chains must have one length of at least 4 draws");
    }
    const auto half = static_cast<std::ptrdiff_t>(chain.size() / 2);
    halves.emplace_back(chain.begin(), chain.begin() + half);
    halves.emplace_back(chain.end() - half, chain.end());
  }
  return halves;
}

// The normal quantile: a rational start, mended by two Halley steps to full double precision.
double normal_quantile(double p) {
  const double t = std::sqrt(-2 * std::log(std::min(p, 1 - p)));
  // Abramowitz and Stegun 26.2.23, error below 4.5e-4.
  double x = t - (2.515517 + 0.802853 * t + 0.010328 * t * t) /
                     (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t);
  x = p < 0.5 ? -x : x;
  for (int round = 0; round < 2; ++round) {
    const double error = 0.5 * std::erfc(-x / std::sqrt(2.0)) - p;
    const double step = error * std::sqrt(2 * 3.14159265358979323846) * std::exp(0.5 * x * x);
    x -= step / (1 + 0.5 * x * step);
  }
  return x;
}

// Normal scores of the average ranks over all chains: quantile((rank - 3/8) / (S + 1/4)).
Chains normal_scores(const Chains& chains) {
  std::vector<double> sorted;
  for (const auto& chain : chains) {
    sorted.insert(sorted.end(), chain.begin(), chain.end());
  }
  std::sort(sorted.begin(), sorted.end());
  const auto total = static_cast<double>(sorted.size());
  // One score a distinct value: years repeat a lot.
  std::vector<double> distinct;
  std::vector<double> score;
  for (std::size_t first = 0; first < sorted.size();) {
    std::size_t past = first;
    while (past < sorted.size() && sorted[past] == sorted[first]) {
      ++past;
    }
    const double rank = 0.5 * static_cast<double>(first + past + 1);
    distinct.push_back(sorted[first]);
    score.push_back(normal_quantile((rank - 0.375) / (total + 0.25)));
    first = past;
  }
  Chains scores = chains;
  for (auto& chain : scores) {
    for (double& x : chain) {
      const auto place =
          std::lower_bound(distinct.begin(), distinct.end(), x) - distinct.begin();
      x = score[static_cast<std::size_t>(place)];
    }
  }
  return scores;
}

double mean_of(const std::vector<double>& x) {
  return std::accumulate(x.begin(), x.end(), 0.0) / static_cast<double>(x.size());
}

struct Spread {
  double within = 0;  // mean of the chains' variances
  double pooled = 0;  // estimate of the variance of the target from all chains
  std::vector<double> means;
};

double variance_about(const std::vector<double>& x, double mean) {
  double sum = 0;
  for (const double v : x) {
    sum += (v - mean) * (v - mean);
  }
  return sum / (static_cast<double>(x.size()) - 1);
}

Spread spread_of(const Chains& chains) {
  Spread spread;
  const auto draws = static_cast<double>(chains.front().size());
  for (const auto& chain : chains) {
    spread.means.push_back(mean_of(chain));
    spread.within += variance_about(chain, spread.means.back());
  }
  spread.within /= static_cast<double>(chains.size());
  const double between =
      chains.size() > 1 ? variance_about(spread.means, mean_of(spread.means)) : 0;
  spread.pooled = (draws - 1) / draws * spread.within + between;
  return spread;
}

double plain_rhat(const Chains& chains) {
  const Spread spread = spread_of(chains);
  // Constant chains leave only the rounding of their mean.
  const double nothing = 1e-24 * (1 + spread.means.front() * spread.means.front());
  if (spread.within <= nothing) {
    return spread.pooled <= nothing ? 1 : std::numeric_limits<double>::infinity();
  }
  return std::sqrt(spread.pooled / spread.within);
}

double autocovariance(const std::vector<double>& x, double mean, std::size_t lag) {
  double sum = 0;
  for (std::size_t i = lag; i < x.size(); ++i) {
    sum += (x[i] - mean) * (x[i - lag] - mean);
  }
  return sum / static_cast<double>(x.size());
}

double correlation_at(const Chains& chains, const Spread& spread, std::size_t lag) {
  double covariance = 0;
  const auto draws = static_cast<double>(chains.front().size());
  for (std::size_t c = 0; c < chains.size(); ++c) {
    covariance += autocovariance(chains[c], spread.means[c], lag) * draws / (draws - 1);
  }
  return 1 - (spread.within - covariance / static_cast<double>(chains.size())) / spread.pooled;
}

// Effective draws of chains already split: S / (-1 + 2 sum of pairs), pairs of neighbouring
// autocorrelations kept positive and never rising.
double plain_ess(const Chains& chains) {
  const Spread spread = spread_of(chains);
  const std::size_t draws = chains.front().size();
  const double total = static_cast<double>(draws * chains.size());
  if (spread.pooled <= 1e-24 * (1 + spread.means.front() * spread.means.front())) {
    return total;
  }
  double sum = 0;
  double last = std::numeric_limits<double>::infinity();
  for (std::size_t lag = 0; lag + 1 < draws; lag += 2) {
    const double even = lag == 0 ? 1 : correlation_at(chains, spread, lag);
    const double pair = even + correlation_at(chains, spread, lag + 1);
    if (pair < 0) {
      break;
    }
    last = std::min(last, pair);
    sum += last;
  }
  return std::min(total / std::max(2 * sum - 1, 1e-9), total * std::log10(total));
}

double quantile_of(const Chains& chains, double share) {
  std::vector<double> all;
  for (const auto& chain : chains) {
    all.insert(all.end(), chain.begin(), chain.end());
  }
  const auto place = static_cast<std::size_t>(share * static_cast<double>(all.size() - 1));
  std::nth_element(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(place), all.end());
  return all[place];
}

double quantile_ess(const Chains& chains, double share) {
  const double limit = quantile_of(chains, share);
  Chains below = chains;
  for (auto& chain : below) {
    for (double& x : chain) {
      x = x <= limit ? 1 : 0;
    }
  }
  return plain_ess(split_in_halves(below));
}

}  // namespace

double rank_rhat(const Chains& chains) {
  Chains halves = split_in_halves(chains);
  const double plain = plain_rhat(normal_scores(halves));
  const double middle = quantile_of(halves, 0.5);
  for (auto& chain : halves) {
    for (double& x : chain) {
      x = std::abs(x - middle);
    }
  }
  return std::max(plain, plain_rhat(normal_scores(halves)));
}

double bulk_ess(const Chains& chains) {
  return plain_ess(normal_scores(split_in_halves(chains)));
}

double tail_ess(const Chains& chains) {
  return std::min(quantile_ess(chains, 0.05), quantile_ess(chains, 0.95));
}

double mean_ess(const Chains& chains) {
  return plain_ess(split_in_halves(chains));
}

double batch_mean_error(const Chains& chains, int batches) {
  std::vector<double> means;
  for (const auto& chain : chains) {
    const std::size_t length = chain.size() / static_cast<std::size_t>(batches);
    if (length == 0) {
      throw BrokenPromise("more batches than draws");
    }
    for (std::size_t b = 0; b < static_cast<std::size_t>(batches); ++b) {
      const auto first = chain.begin() + static_cast<std::ptrdiff_t>(b * length);
      means.push_back(std::accumulate(first, first + static_cast<std::ptrdiff_t>(length), 0.0) /
                      static_cast<double>(length));
    }
  }
  return std::sqrt(variance_about(means, mean_of(means)) / static_cast<double>(means.size()));
}

Convergence judge_convergence(const std::vector<Chains>& quantities) {
  std::vector<Convergence> parts;
  for (const Chains& chains : quantities) {
    const double rhat = rank_rhat(chains);
    const double bulk = bulk_ess(chains);
    const double least = std::min(bulk, tail_ess(chains));
    parts.push_back({1, rhat, rhat < 1.01 ? 1.0 : 0.0, least, bulk, least > 400 ? 1.0 : 0.0});
  }
  return joined(parts);
}

Convergence joined(const std::vector<Convergence>& parts) {
  Convergence all{0, 1, 0, std::numeric_limits<double>::infinity(), 0, 0};
  for (const Convergence& part : parts) {
    const auto weight = static_cast<double>(part.quantities);
    all.quantities += part.quantities;
    if (part.quantities > 0) {
      all.rhat_max = std::max(all.rhat_max, part.rhat_max);
      all.ess_min = std::min(all.ess_min, part.ess_min);
    }
    all.rhat_good_share += weight * part.rhat_good_share;
    all.ess_mean += weight * part.ess_mean;
    all.ess_good_share += weight * part.ess_good_share;
  }
  if (all.quantities == 0) {
    return {};
  }
  const auto total = static_cast<double>(all.quantities);
  all.rhat_good_share /= total;
  all.ess_mean /= total;
  all.ess_good_share /= total;
  return all;
}

}  // namespace backmark::evidence
