#include "evidence/stack.h"

#include <algorithm>
#include <cmath>

#include "evidence/minimise.h"
#include "evidence/parallel.h"

namespace backmark::evidence {

namespace {

constexpr std::size_t shares = 16;

// p(t) from log weights, in place; gives nothing away for overflow.
void exponentiate(std::vector<double>& x) {
  const double top = *std::max_element(x.begin(), x.end());
  double sum = 0;
  for (double& value : x) {
    value = std::exp(value - top);
    sum += value;
  }
  for (double& value : x) {
    value /= sum;
  }
}

// How much of each bin the span covers, 0 to 1.
struct Cover {
  Cover(const YearGrid& bins, YearSpan stated)
      : from(bins.edge(stated.first)), to(bins.edge(stated.last + 1)) {
    const auto cells = static_cast<double>(bins.cells());
    if (to <= from) {
      from = std::min(from, cells - 1);
      to = from + 1;
    }
    first = static_cast<std::size_t>(from);
    last = static_cast<std::size_t>(std::ceil(to));
  }
  double of(std::size_t bin) const {
    const auto left = static_cast<double>(bin);
    return std::min(to, left + 1) - std::max(from, left);
  }
  double from, to;
  std::size_t first = 0, last = 0;
};

// Minus the log mass of one target; adds its slope.
double judge(const StackTask& task,
             const StackTarget& target,
             const std::vector<double>& b,
             std::vector<double>& slope) {
  const std::size_t cells = task.bins.cells();
  const std::size_t lines = task.prior.size();
  std::vector<double> p(cells, 0.0);
  for (std::size_t line = 0; line < lines; ++line) {
    const float* values = target.lines.data() + line * cells;
    for (std::size_t bin = 0; bin < cells; ++bin) {
      p[bin] += b[line] * static_cast<double>(values[bin]);
    }
  }
  exponentiate(p);
  const Cover cover(task.bins, target.stated);
  double mass = 1e-12;
  for (std::size_t bin = cover.first; bin < cover.last; ++bin) {
    mass += cover.of(bin) * p[bin];
  }
  // d log mass / d log-weight(t) = p(t) (cover(t) / mass - 1)
  for (std::size_t bin = 0; bin < cells; ++bin) {
    const bool inside = bin >= cover.first && bin < cover.last;
    p[bin] *= (inside ? cover.of(bin) / mass : 0.0) - 1;
  }
  for (std::size_t line = 0; line < lines; ++line) {
    const float* values = target.lines.data() + line * cells;
    double along = 0;
    for (std::size_t bin = 0; bin < cells; ++bin) {
      along += p[bin] * static_cast<double>(values[bin]);
    }
    slope[line] -= target.judged * along;
  }
  return -target.judged * std::log(mass);
}

}  // namespace

double stack_score(const StackTask& task,
                   const Watch& watch,
                   const std::vector<double>& b,
                   std::vector<double>& slope) {
  std::vector<double> values(shares, 0.0);
  std::vector<std::vector<double>> slopes(shares, std::vector<double>(b.size(), 0.0));
  in_shares(shares, watch.threads, [&](std::size_t share) {
    for (std::size_t j = share; j < task.targets.size(); j += shares) {
      values[share] += judge(task, task.targets[j], b, slopes[share]);
    }
  });
  double value = 0;
  slope.assign(b.size(), 0.0);
  for (std::size_t share = 0; share < shares; ++share) {
    value += values[share];
    for (std::size_t line = 0; line < b.size(); ++line) {
      slope[line] += slopes[share][line];
    }
  }
  const double scale = task.scaled > 0 ? std::exp(b.back()) : 1;
  for (std::size_t line = 0; line < task.prior.size(); ++line) {
    const bool scaled = line < task.scaled;
    const double centre = task.prior[line] * (scaled ? scale : 1);
    const double off = b[line] - centre;
    value += 0.5 * task.ridge * off * off;
    slope[line] += task.ridge * off;
    if (scaled) {
      slope.back() -= task.ridge * off * centre;
    }
  }
  if (task.scaled > 0) {
    value += 0.5 * task.ridge_scale * b.back() * b.back();
    slope.back() += task.ridge_scale * b.back();
  }
  return value;
}

Result<StackFit> fit_stack(const StackTask& task, const Watch& watch) {
  const Smooth smooth = [&](const std::vector<double>& b, std::vector<double>& slope) {
    if (watch.stop.stop_requested()) {  // flat: the descent ends at once
      std::fill(slope.begin(), slope.end(), 0.0);
      return 0.0;
    }
    return stack_score(task, watch, b, slope);
  };
  Descent descent;
  descent.lowest.assign(task.prior.size(), 0.0);
  descent.enough = 1e-6;
  auto start = task.prior;
  if (task.scaled > 0) {
    start.push_back(0);
    descent.lowest.push_back(-3);
  }
  auto best = minimise(smooth, start, descent);
  if (watch.stop.stop_requested()) {
    return stopped();
  }
  std::vector<double> slope;
  StackFit fit{best, stack_score(task, watch, best, slope)};
  fit.b.resize(task.prior.size());
  return fit;
}

std::vector<double> stacked(const std::vector<double>& b,
                            const std::vector<std::vector<double>>& lines,
                            std::size_t cells) {
  std::vector<double> p(cells, 0.0);
  for (std::size_t line = 0; line < b.size(); ++line) {
    for (std::size_t cell = 0; cell < cells && !lines[line].empty(); ++cell) {
      p[cell] += b[line] * lines[line][cell];
    }
  }
  exponentiate(p);
  return p;
}

}  // namespace backmark::evidence
