#include "evidence/comparanda.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace backmark::evidence {

SpanCurves::SpanCurves(const YearGrid& grid, double smoothing_cells)
    : grid_(grid), smoother_(Smoother(grid.cells(), smoothing_cells)) {}

std::size_t SpanCurves::add(YearSpan stated) {
  const auto [at, fresh] = numbers_.try_emplace({stated.first, stated.last}, spans_.size());
  if (fresh) {
    spans_.push_back(stated);
  }
  return at->second;
}

std::vector<double> SpanCurves::mixed(const std::vector<double>& weight) const {
  std::vector<double> p(grid_.cells(), 0.0);
  for (std::size_t s = 0; s < spans_.size(); ++s) {
    if (weight[s] > 0) {
      add_span(grid_, spans_[s], weight[s], p);
    }
  }
  if (smoother_) {
    smoother_->apply(p);
  }
  return p;
}

std::vector<float> SpanCurves::masses() const {
  std::vector<float> masses(size() * size());
  std::vector<double> one(size(), 0.0);
  for (std::size_t u = 0; u < size(); ++u) {
    one[u] = 1;
    const auto sums = cumulated(mixed(one));
    one[u] = 0;
    for (std::size_t v = 0; v < size(); ++v) {
      masses[u * size() + v] = static_cast<float>(mass_between(grid_, sums, spans_[v]));
    }
  }
  return masses;
}

OverallDensity::OverallDensity(const YearGrid& grid, double smoothing_cells)
    : grid_(grid),
      smoother_(Smoother(grid.cells(), smoothing_cells)),
      all_(grid.cells(), 0.0) {}

void OverallDensity::add(int lot, YearSpan stated, double weight) {
  add_span(grid_, stated, weight, all_);
  lots_[lot].push_back({stated, weight});
}

std::vector<double> OverallDensity::without(std::optional<int> lot) const {
  std::vector<double> p = all_;
  const auto own = lot ? lots_.find(*lot) : lots_.end();
  if (own != lots_.end()) {
    for (const Stated& stated : own->second) {
      add_span(grid_, stated.span, -stated.weight, p);
    }
  }
  for (double& value : p) {
    value = std::max(value, 0.0);
  }
  smoother_->apply(p);
  double sum = 0;
  for (const double value : p) {
    sum += value;
  }
  // A thousandth part is flat, so that no year is ever ruled out by style alone.
  const auto cells = static_cast<double>(p.size());
  for (double& value : p) {
    value = sum > 1e-9 ? 0.999 * value / sum + 0.001 / cells : 1 / cells;
  }
  return p;
}

Comparanda::Comparanda(const StyleTable& table,
                       DistancePool pool,
                       std::vector<double> evidence,
                       const YearGrid& grid,
                       double smoothing_cells)
    : pool_(std::move(pool)), evidence_(std::move(evidence)), spans_(grid, smoothing_cells) {
  for (std::size_t i = 0; i < pool_.size(); ++i) {
    const auto& piece = table.pieces[pool_.member(i)];
    lots_.push_back(piece.lot);
    span_.push_back(spans_.add(*piece.stated));
  }
}

Told Comparanda::told(const std::vector<StyleValue>& values, std::optional<int> lot) const {
  return told_without(values, lot, {}).front();
}

std::vector<Told> Comparanda::told_without(
    const std::vector<StyleValue>& values,
    std::optional<int> lot,
    const std::vector<std::vector<std::size_t>>& groups) const {
  const std::size_t count = pool_.size();
  std::vector<std::uint8_t> bytes(count * pool_.kinds());
  pool_.row(values, count, bytes.data());
  std::vector<float> scaled;
  for (std::size_t kind = 0; kind < pool_.kinds(); ++kind) {
    scaled.push_back(static_cast<float>(likeness_.d[kind]) * pool_.step(kind));
  }
  std::vector<Told> all;
  for (std::size_t group = 0; group <= groups.size(); ++group) {
    std::vector<float> weights = scaled;
    double missing = 0;  // what a character that is not recorded adds to every distance
    if (group > 0) {
      for (const std::size_t kind : groups[group - 1]) {
        missing += static_cast<double>(scaled[kind]) * pool_.missing(kind);
        weights[kind] = 0;
      }
    }
    Told told;
    told.weight.resize(count);
    kernel_row(bytes.data(), count, weights, told.weight.data());
    const double shrunk = std::exp(-missing);
    for (std::size_t i = 0; i < count; ++i) {
      told.weight[i] = lot && lots_[i] == *lot
                           ? 0
                           : told.weight[i] * static_cast<float>(evidence_[i] * shrunk);
      told.all += static_cast<double>(told.weight[i]);
    }
    all.push_back(std::move(told));
  }
  return all;
}

std::vector<double> Comparanda::years(const Told& told,
                                      const std::vector<double>& overall) const {
  std::vector<double> by_span(spans_.size(), 0.0);
  for (std::size_t i = 0; i < told.weight.size(); ++i) {
    by_span[span_[i]] += static_cast<double>(told.weight[i]);
  }
  std::vector<double> p = spans_.mixed(by_span);
  const double all = told.all + likeness_.open;
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    p[cell] = (p[cell] + likeness_.open * overall[cell]) / all;
  }
  return p;
}

std::vector<double> Comparanda::parts(const std::vector<StyleValue>& values,
                                      std::size_t i) const {
  std::vector<std::uint8_t> bytes((i + 1) * pool_.kinds());
  pool_.row(values, i + 1, bytes.data());
  std::vector<double> parts;
  for (std::size_t kind = 0; kind < pool_.kinds(); ++kind) {
    parts.push_back(likeness_.d[kind] * static_cast<double>(pool_.step(kind)) *
                    bytes[kind * (i + 1) + i]);
  }
  return parts;
}

std::vector<std::size_t> Comparanda::heaviest(const Told& told, std::size_t count) {
  std::vector<std::size_t> order(told.weight.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  count = std::min(count, order.size());
  std::partial_sort(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(count),
                    order.end(), [&](std::size_t a, std::size_t b) {
                      return told.weight[a] != told.weight[b] ? told.weight[a] > told.weight[b]
                                                              : a < b;
                    });
  order.resize(count);
  return order;
}

}  // namespace backmark::evidence
