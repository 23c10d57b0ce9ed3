#include "evidence/lineage_undated.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

#include "base/result.h"
#include "evidence/draw.h"

namespace backmark::evidence {
namespace {

// ln of a product of many factors, logarithms taken 8 factors at a time.
class LogProduct {
 public:
  void times(double factor) {
    product_ *= factor;
    if (++taken_ % 8 == 0) {
      sum_ += std::log(product_);
      product_ = 1;
    }
  }
  double value() const { return sum_ + std::log(product_); }

 private:
  double sum_ = 0;
  double product_ = 1;
  int taken_ = 0;
};

}  // namespace

UndatedMarks::UndatedMarks(int years, int variants, double stray)
    : years_(years),
      variants_(variants),
      stray_(stray),
      bearing_(static_cast<Index>(variants)) {}

std::size_t UndatedMarks::add(int variant, std::vector<double> weight) {
  const double total = std::accumulate(weight.begin(), weight.end(), 0.0);
  if (!(total > 0)) {
    throw BrokenPromise("a piece with a mark has no possible year");
  }
  for (double& w : weight) {
    w /= total;
  }
  // tails[b]: sum over u < b of the weight of years from u on.
  std::vector<double> tails(weight.size() + 1, 0);
  double tail = 1;
  for (Index b = 0; b < weight.size(); ++b) {
    tails[b + 1] = tails[b] + tail;
    tail -= weight[b];
  }
  bearing_[static_cast<Index>(variant)].push_back(pieces_.size());
  pieces_.push_back({variant, std::move(weight), std::move(tails)});
  return pieces_.size() - 1;
}

// U(b): G is the mean of 2d + 1 steps at b - d .. b + d. Before the grid the tail sum is 1,
// after it 0.
double UndatedMarks::tail_mean(const Piece& piece, int change, int overlap) const {
  const auto sum_below = [&](int b) {
    return b < 0 ? static_cast<double>(b)
                 : piece.tails[static_cast<Index>(std::min(b, years_))];
  };
  return (sum_below(change + overlap + 1) - sum_below(change - overlap)) / (2 * overlap + 1);
}

// The same for a change by its number; before the first all, after the last nothing.
double UndatedMarks::from_change(const Piece& piece,
                                 const LineageState& state,
                                 int change) const {
  if (change < 0) {
    return 1;
  }
  return change + 1 < variants_
             ? tail_mean(piece, state.change[static_cast<Index>(change)], state.overlap)
             : 0;
}

double UndatedMarks::chance(double from, double to) const {
  return (1 - stray_) * std::max(0.0, from - to) + stray_ / variants_;
}

double UndatedMarks::evidence(const LineageState& state) const {
  LogProduct product;
  for (const Piece& piece : pieces_) {
    product.times(chance(from_change(piece, state, piece.variant - 1),
                         from_change(piece, state, piece.variant)));
  }
  return product.value();
}

void UndatedMarks::redraw_change(LineageState& state, int change, Random& random) const {
  const auto at = static_cast<Index>(change);
  const int first = change == 0 ? 0 : state.change[at - 1];
  const int last = change + 2 < variants_ ? state.change[at + 1] : years_ - 1;
  std::vector<LogProduct> product(static_cast<Index>(last - first + 1));
  for (const int variant : {change, change + 1}) {
    for (const Index place : bearing_[static_cast<Index>(variant)]) {
      const Piece& piece = pieces_[place];
      const double before = from_change(piece, state, change - 1);
      const double after = from_change(piece, state, change + 1);
      for (int b = first; b <= last; ++b) {
        const double here = tail_mean(piece, b, state.overlap);
        product[static_cast<Index>(b - first)].times(variant == change ? chance(before, here)
                                                                       : chance(here, after));
      }
    }
  }
  std::vector<double> log_p;
  for (const LogProduct& one : product) {
    log_p.push_back(one.value());
  }
  if (std::any_of(log_p.begin(), log_p.end(), [](double x) { return std::isfinite(x); })) {
    state.change[at] = first + static_cast<int>(draw_log(std::move(log_p), random));
  }
}

void UndatedMarks::redraw(LineageState& state,
                          const std::vector<int>& overlaps,
                          Random& random) const {
  std::vector<double> log_p;
  for (const int overlap : overlaps) {
    log_p.push_back(evidence({state.change, overlap}));
  }
  state.overlap = overlaps[draw_log(std::move(log_p), random)];
  for (int change = 0; change + 1 < variants_; ++change) {
    redraw_change(state, change, random);
  }
}

int UndatedMarks::draw_year(std::size_t place,
                            const std::vector<std::vector<double>>& curves,
                            Random& random) const {
  const Piece& piece = pieces_[place];
  std::vector<double> weight = piece.weight;
  const auto& curve = curves[static_cast<Index>(piece.variant)];
  std::transform(weight.begin(), weight.end(), curve.begin(), weight.begin(),
                 std::multiplies<>());
  return static_cast<int>(random.weighted(weight));
}

}  // namespace backmark::evidence
