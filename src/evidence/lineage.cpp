#include "evidence/lineage.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "base/result.h"
#include "base/year.h"
#include "evidence/draw.h"

namespace backmark::evidence {
namespace {

constexpr double impossible = -std::numeric_limits<double>::infinity();

double ramp(int x, int overlap) {
  return std::clamp((x + overlap + 1.0) / (2.0 * overlap + 1.0), 0.0, 1.0);
}

// ln of prod over years of (upper - lower)^count: the pieces of one variant between two
// changes. Products are taken 32 at a time, so that logarithms are few.
class BetweenChanges {
 public:
  BetweenChanges(const std::vector<int>& counts, int overlap) : overlap_(overlap) {
    for (std::size_t t = 0; t < counts.size(); ++t) {
      for (int k = 0; k < counts[t]; ++k) {
        years_.push_back(static_cast<int>(t));
      }
    }
  }

  // From change `from` (or always, if `open_start`) up to change `to` (or on, if `open_end`).
  double log_at(int from, int to, bool open_start, bool open_end) const {
    double log_sum = 0;
    double product = 1;
    int taken = 0;
    for (const int t : years_) {
      const double upper = open_start ? 1 : ramp(t - from, overlap_);
      const double lower = open_end ? 0 : ramp(t - to, overlap_);
      if (upper <= lower) {
        return impossible;
      }
      product *= upper - lower;
      if (++taken % 32 == 0) {
        log_sum += std::log(product);
        product = 1;
      }
    }
    return log_sum + std::log(product);
  }

 private:
  int overlap_;
  std::vector<int> years_;
};

// forward[j][b]: ln of the sum over b_1..b_j with b_{j+1} = b, of the evidence of variants
// 0..j.
std::vector<std::vector<double>> forward_sums(const VariantCounts& counts, int overlap) {
  const int years = static_cast<int>(counts.front().size());
  const std::size_t changes = counts.size() - 1;
  std::vector<std::vector<double>> forward;
  for (std::size_t j = 0; j < changes; ++j) {
    const BetweenChanges between(counts[j], overlap);
    std::vector<double> row;
    for (int b = 0; b < years; ++b) {
      if (j == 0) {
        row.push_back(between.log_at(0, b, true, false));
        continue;
      }
      std::vector<double> terms;
      for (int a = 0; a <= b; ++a) {
        const double before = forward[j - 1][static_cast<std::size_t>(a)];
        if (before != impossible) {
          terms.push_back(before + between.log_at(a, b, false, false));
        }
      }
      row.push_back(log_sum_exp(terms));
    }
    forward.push_back(std::move(row));
  }
  return forward;
}

// ln weight of each last change year, evidence of the last variant included.
std::vector<double> last_change_log(const VariantCounts& counts,
                                    const std::vector<std::vector<double>>& forward,
                                    int overlap) {
  const BetweenChanges between(counts.back(), overlap);
  std::vector<double> log_p = forward.back();
  for (std::size_t b = 0; b < log_p.size(); ++b) {
    log_p[b] += between.log_at(static_cast<int>(b), 0, false, true);
  }
  return log_p;
}

}  // namespace

std::vector<std::vector<double>> variant_curves(const LineageState& state, int years) {
  std::vector<std::vector<double>> curves;
  for (std::size_t j = 0; j <= state.change.size(); ++j) {
    std::vector<double> curve;
    for (int t = 0; t < years; ++t) {
      const double upper = j == 0 ? 1 : ramp(t - state.change[j - 1], state.overlap);
      const double lower =
          j == state.change.size() ? 0 : ramp(t - state.change[j], state.overlap);
      curve.push_back(std::max(0.0, upper - lower));
    }
    curves.push_back(std::move(curve));
  }
  return curves;
}

double lineage_evidence(const VariantCounts& counts, int overlap) {
  if (counts.size() < 2) {
    throw BrokenPromise("a lineage has at least two variants");
  }
  return log_sum_exp(last_change_log(counts, forward_sums(counts, overlap), overlap));
}

LineageState draw_lineage(const VariantCounts& counts,
                          const std::vector<int>& overlaps,
                          Random& random) {
  std::vector<double> evidence;
  for (const int overlap : overlaps) {
    evidence.push_back(lineage_evidence(counts, overlap));
  }
  LineageState state;
  state.overlap = overlaps[draw_log(evidence, random)];
  const auto forward = forward_sums(counts, state.overlap);
  state.change.resize(counts.size() - 1);
  std::size_t b = draw_log(last_change_log(counts, forward, state.overlap), random);
  state.change.back() = static_cast<int>(b);
  for (std::size_t j = forward.size() - 1; j-- > 0;) {
    const BetweenChanges between(counts[j + 1], state.overlap);
    std::vector<double> log_p(forward[j].begin(),
                              forward[j].begin() + static_cast<std::ptrdiff_t>(b) + 1);
    for (std::size_t a = 0; a < log_p.size(); ++a) {
      log_p[a] += between.log_at(static_cast<int>(a), static_cast<int>(b), false, false);
    }
    b = draw_log(log_p, random);
    state.change[j] = static_cast<int>(b);
  }
  return state;
}

LineageState draw_lineage_prior(int variants,
                                int years,
                                const std::vector<int>& overlaps,
                                Random& random) {
  const VariantCounts nothing(static_cast<std::size_t>(variants),
                              std::vector<int>(static_cast<std::size_t>(years), 0));
  return draw_lineage(nothing, overlaps, random);
}

}  // namespace backmark::evidence
