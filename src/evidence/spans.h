// The working span of a maker, with its own uncertainty, and what it says about a piece's year.
//
// A maker worked from s to e (both included, L = e - s + 1 years). Prior: s is normal around a
// documented start plus 2 % flat, or flat; L is a discretised gamma; a documented end is one
// more normal-plus-flat factor. A piece by the maker is from any of the L years alike:
//     p(t | s, e) = 1/L inside s..e.
// Pieces with known years teach the span: each multiplies sum over s..e of q_i(t), over L.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "base/year.h"

namespace backmark::evidence {

// What is documented of a maker. Nothing given: any start, the usual length.
struct SpanPrior {
  std::optional<int> start;
  double start_sd = 4;  // years; 4 well documented, 25 hearsay
  std::optional<int> end;
  double end_sd = 4;
  double length_mean =
      25;  // years; persons 25, sd 12; firms 40, sd 30. Common practice, no source
  double length_sd = 12;
};

// Log prior of each possible (s, e) on a grid; `log_at` is -infinity outside.
class SpanTable {
 public:
  // Spans longer than mean + 5 sd of the length are left out, so size grows with the grid, not
  // with its square.
  SpanTable(const SpanPrior& prior, YearSpan years);

  int years() const { return years_; }
  int longest() const { return longest_; }
  // Normalised over all spans of the grid; start and end as offsets from the first year.
  double log_at(int start, int end) const {
    const int length = end - start + 1;
    if (start < 0 || end >= years_ || length < 1 || length > longest_) {
      return -1e300;
    }
    return start_log_[static_cast<std::size_t>(start)] +
           end_log_[static_cast<std::size_t>(end)] +
           length_log_[static_cast<std::size_t>(length)];
  }
  // The same as a chance; start and end must be a span of the grid, not longer than `longest`.
  double at(int start, int end) const {
    return start_[static_cast<std::size_t>(start)] * end_[static_cast<std::size_t>(end)] *
           length_[static_cast<std::size_t>(end - start + 1)];
  }

 private:
  int years_ = 0;
  int longest_ = 0;
  std::vector<double> start_log_;             // one a year
  std::vector<double> end_log_;               // one a year
  std::vector<double> length_log_;            // by length, [0] unused
  std::vector<double> start_, end_, length_;  // their exponentials
};

struct SpanBelief {
  std::vector<double> start_p;  // one a year of the grid, sums to 1
  std::vector<double> end_p;
  // p(t | a piece by this maker), sums to 1: 1/L averaged over the spans.
  std::vector<double> year_p;
};

// The span given pieces by the maker whose years are independent with probabilities
// `piece_years` (each one value a year of `years`, summing to 1; may be empty). `stray` is the
// share of pieces that tell nothing of the span (pupils, later casts): each piece counts
// (1-stray) q(s..e)/L + stray/T.
SpanBelief span_belief(const SpanPrior& prior,
                       YearSpan years,
                       const std::vector<std::vector<double>>& piece_years,
                       double stray);

// The factor a span puts on the year of a piece by this maker: (1-stray) year_p T + stray,
// mean 1.
std::vector<double> span_factor(const SpanBelief& belief, double stray);

}  // namespace backmark::evidence
