#include "evidence/recalibration.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace backmark::evidence {

namespace {

// Spreads `weight` evenly over ranks from..to.
void add_ranks(double from, double to, double weight, std::vector<double>& histogram) {
  const auto cells = static_cast<double>(histogram.size());
  from = std::clamp(from, 0.0, 1.0) * cells;
  to = std::clamp(to, 0.0, 1.0) * cells;
  if (to - from < 1e-9) {
    const auto cell = std::min(static_cast<std::size_t>(from), histogram.size() - 1);
    histogram[cell] += weight;
    return;
  }
  for (auto cell = static_cast<std::size_t>(from); static_cast<double>(cell) < to; ++cell) {
    const auto left = static_cast<double>(cell);
    histogram[std::min(cell, histogram.size() - 1)] +=
        weight * (std::min(to, left + 1) - std::max(from, left)) / (to - from);
  }
}

double rank_at(const std::vector<double>& cumulative, double position) {
  const auto cell = std::min(static_cast<std::size_t>(position), cumulative.size() - 2);
  const double inside = position - static_cast<double>(cell);
  return cumulative[cell] + inside * (cumulative[cell + 1] - cumulative[cell]);
}

double log_odds(double p) {
  const double safe = std::clamp(p, 1e-6, 1 - 1e-6);
  return std::log(safe / (1 - safe));
}

double chance(double odds_log) {
  return 1 / (1 + std::exp(-odds_log));
}

}  // namespace

namespace {

constexpr double lag_ends[] = {1, 3, 6, 12, 25, 50, 100, 200};  // years, on an axis up to 500
constexpr int rounds = 4;

}  // namespace

LagMap::LagMap(const YearGrid& grid,
               const std::vector<Arrival>& arrivals,
               double after,
               double pseudo_count)
    : grid_(grid), scale_(std::max(1.0, grid.span.length() / 500.0)) {
  const std::size_t stretches = 2 + std::size(lag_ends);
  std::vector<double> seen(stretches, pseudo_count);
  for (const Arrival& arrival : arrivals) {
    std::vector<double> truth(grid.cells(), 0.0);
    add_span(grid, arrival.stated, arrival.judged, truth);
    for (std::size_t cell = 0; cell < truth.size(); ++cell) {
      seen[stretch(cell, arrival.latest)] += truth[cell];
    }
  }
  ratio_.assign(stretches, 1);
  ratio_[0] = after;
  for (int round = 0; round < rounds && !arrivals.empty(); ++round) {
    std::vector<double> given(stretches, pseudo_count);
    for (const Arrival& arrival : arrivals) {
      std::vector<double> p = *arrival.p;
      apply(p, arrival.latest);
      for (std::size_t cell = 0; cell < p.size(); ++cell) {
        given[stretch(cell, arrival.latest)] += arrival.judged * p[cell];
      }
    }
    for (std::size_t at = 1; at < stretches; ++at) {
      ratio_[at] *= seen[at] / given[at];
    }
  }
}

LagMap::LagMap(const YearGrid& grid, std::vector<double> ratio)
    : grid_(grid),
      scale_(std::max(1.0, grid.span.length() / 500.0)),
      ratio_(std::move(ratio)) {}

std::size_t LagMap::stretch(std::size_t cell, Year latest) const {
  const double year = grid_.span.first.value + static_cast<double>(cell) * grid_.width;
  const double lag = (latest.value - year) / scale_;
  if (lag < 0) {
    return 0;
  }
  const auto* const end = std::upper_bound(std::begin(lag_ends), std::end(lag_ends), lag);
  return 1 + static_cast<std::size_t>(end - std::begin(lag_ends));
}

void LagMap::apply(std::vector<double>& p, Year latest) const {
  if (ratio_.empty()) {
    return;
  }
  double sum = 0;
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    p[cell] *= ratio_[stretch(cell, latest)];
    sum += p[cell];
  }
  for (double& value : p) {
    value /= sum;
  }
}

// Inside a stated span every cell counts alike, so a span is a row of small rank intervals.
RankMap::RankMap(const YearGrid& grid,
                 const std::vector<Known>& known,
                 std::size_t cells,
                 double pseudo_count)
    : histogram_(cells, pseudo_count / static_cast<double>(cells)) {
  for (const Known& one : known) {
    const double from = grid.edge(one.stated.first);
    const double to = std::max(grid.edge(one.stated.last + 1), from + 1e-6);
    for (double left = from; left < to - 1e-9;) {
      const double right = std::min(to, std::floor(left + 1e-9) + 1);
      add_ranks(rank_at(one.cumulative, left), rank_at(one.cumulative, right),
                one.judged * (right - left) / (to - from), histogram_);
      left = right;
    }
  }
  double sum = 0;
  for (const double count : histogram_) {
    sum += count;
  }
  for (double& count : histogram_) {
    count /= sum;
  }
}

double RankMap::operator()(double rank) const {
  if (histogram_.empty()) {
    return rank;
  }
  const double position = std::clamp(rank, 0.0, 1.0) * static_cast<double>(histogram_.size());
  double below = 0;
  for (std::size_t cell = 0; cell < histogram_.size(); ++cell) {
    const double inside = std::clamp(position - static_cast<double>(cell), 0.0, 1.0);
    below += inside * histogram_[cell];
  }
  return below;
}

std::vector<double> RankMap::mend(const std::vector<double>& p) const {
  if (histogram_.empty()) {
    return p;
  }
  std::vector<double> mended(p.size());
  double rank = 0;
  double before = 0;
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    rank += p[cell];
    const double after = cell + 1 == p.size() ? 1 : (*this)(rank);
    mended[cell] = std::max(0.0, after - before);
    before = after;
  }
  return mended;
}

double OddsMap::operator()(double p) const {
  return chance(offset + slope * log_odds(p));
}

// Newton's method on a concave function of two numbers.
OddsMap fit_odds(const std::vector<YesNo>& answers) {
  OddsMap map;
  for (const YesNo& answer : answers) {
    map.answers += answer.judged;
  }
  for (int round = 0; round < 50; ++round) {
    double g0 = -map.offset;
    double g1 = 1 - map.slope;
    double h00 = 1;
    double h01 = 0;
    double h11 = 1;
    for (const YesNo& answer : answers) {
      const double x = log_odds(answer.p);
      const double q = chance(map.offset + map.slope * x);
      const double off = answer.judged * ((answer.yes ? 1 : 0) - q);
      const double bend = answer.judged * q * (1 - q);
      g0 += off;
      g1 += off * x;
      h00 += bend;
      h01 += bend * x;
      h11 += bend * x * x;
    }
    const double det = h00 * h11 - h01 * h01;
    const double step0 = (h11 * g0 - h01 * g1) / det;
    const double step1 = (h00 * g1 - h01 * g0) / det;
    const double cut = std::min(1.0, 2 / (std::abs(step0) + std::abs(step1) + 1e-12));
    map.offset += cut * step0;
    map.slope += cut * step1;
    if (std::abs(step0) + std::abs(step1) < 1e-10) {
      break;
    }
  }
  map.slope = std::max(map.slope, 0.0);  // more evidence for "before" never says "after"
  return map;
}

}  // namespace backmark::evidence
