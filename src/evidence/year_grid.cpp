#include "evidence/year_grid.h"

#include <algorithm>
#include <cmath>

namespace backmark::evidence {

YearGrid YearGrid::over(YearSpan span, int most) {
  return {span, std::max(1, (span.length() + most - 1) / most)};
}

double YearGrid::edge(Year year) const {
  const double position = static_cast<double>(year - span.first) / width;
  return std::clamp(position, 0.0, static_cast<double>(cells()));
}

void add_span(const YearGrid& grid, YearSpan stated, double weight, std::vector<double>& onto) {
  const auto cells = static_cast<double>(grid.cells());
  double from = grid.edge(stated.first);
  double to = grid.edge(stated.last + 1);
  if (to <= from) {  // wholly outside
    from = std::min(from, cells - 1);
    to = from + 1;
  }
  const double height = weight / (to - from);
  const auto last = static_cast<std::size_t>(std::ceil(to));
  for (auto cell = static_cast<std::size_t>(from); cell < last; ++cell) {
    const auto left = static_cast<double>(cell);
    onto[cell] += height * (std::min(to, left + 1) - std::max(from, left));
  }
}

std::vector<double> cumulated(const std::vector<double>& p) {
  std::vector<double> sums(p.size() + 1, 0.0);
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    sums[cell + 1] = sums[cell] + p[cell];
  }
  return sums;
}

namespace {

double at(const std::vector<double>& cumulative, double position) {
  const auto cell = std::min(static_cast<std::size_t>(position), cumulative.size() - 2);
  const double inside = position - static_cast<double>(cell);
  return cumulative[cell] + inside * (cumulative[cell + 1] - cumulative[cell]);
}

}  // namespace

double mass_between(const YearGrid& grid,
                    const std::vector<double>& cumulative,
                    YearSpan stated) {
  const double mass =
      at(cumulative, grid.edge(stated.last + 1)) - at(cumulative, grid.edge(stated.first));
  return std::max(mass, 1e-12);
}

std::vector<double> to_years(const YearGrid& grid, const std::vector<double>& p) {
  std::vector<double> years(static_cast<std::size_t>(grid.span.length()));
  const auto width = static_cast<std::size_t>(grid.width);
  for (std::size_t year = 0; year < years.size(); ++year) {
    const std::size_t cell = year / width;
    const std::size_t inside = std::min(width, years.size() - cell * width);
    years[year] = p[cell] / static_cast<double>(inside);
  }
  return years;
}

Smoother::Smoother(std::size_t cells, double sd) {
  if (sd < 0.05) {
    return;
  }
  const auto reach = std::min(static_cast<std::size_t>(std::ceil(4 * sd)), cells - 1);
  for (std::size_t step = 0; step <= reach; ++step) {
    const double z = static_cast<double>(step) / sd;
    kernel_.push_back(std::exp(-0.5 * z * z));
  }
  keep_.resize(cells);
  for (std::size_t cell = 0; cell < cells; ++cell) {
    double left = kernel_[0];
    for (std::size_t step = 1; step <= reach; ++step) {
      left += (cell >= step ? kernel_[step] : 0) + (cell + step < cells ? kernel_[step] : 0);
    }
    keep_[cell] = 1 / left;
  }
}

void Smoother::apply(std::vector<double>& p) const {
  if (kernel_.empty()) {
    return;
  }
  std::vector<double> out(p.size(), 0.0);
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    const double share = p[cell] * keep_[cell];
    if (share == 0) {
      continue;
    }
    out[cell] += share * kernel_[0];
    const std::size_t left = std::min(cell, kernel_.size() - 1);
    for (std::size_t step = 1; step <= left; ++step) {
      out[cell - step] += share * kernel_[step];
    }
    const std::size_t right = std::min(p.size() - 1 - cell, kernel_.size() - 1);
    for (std::size_t step = 1; step <= right; ++step) {
      out[cell + step] += share * kernel_[step];
    }
  }
  p = std::move(out);
}

}  // namespace backmark::evidence
