#include "evidence/component.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/result.h"
#include "base/year.h"

namespace backmark::evidence {
namespace {

// A component's curves on the natural scale, largest of both 1.
struct Lines {
  std::vector<double> original;
  std::vector<double> later;
  std::vector<double> factor;
};

Lines lines_of(const ComponentEvidence& component, int gap) {
  const std::vector<double> later = later_log(component.weight_log, gap);
  const double top =
      *std::max_element(component.weight_log.begin(), component.weight_log.end());
  const double rho = component.replaced_share;
  Lines lines;
  for (std::size_t t = 0; t < later.size(); ++t) {
    lines.original.push_back(std::exp(component.weight_log[t] - top));
    lines.later.push_back(std::exp(later[t] - top));
    lines.factor.push_back((1 - rho) * lines.original[t] + rho * lines.later[t]);
  }
  return lines;
}

void multiply_and_scale(std::vector<double>& p, const std::vector<double>& by) {
  double total = 0;
  for (std::size_t t = 0; t < p.size(); ++t) {
    p[t] *= by[t];
    total += p[t];
  }
  if (total > 0) {
    for (double& x : p) {
      x /= total;
    }
  }
}

double logistic(double x) {
  return 1 / (1 + std::exp(-x));
}

double replaced_log_odds(const ComponentEvidence& component,
                         const Lines& lines,
                         const std::vector<double>& p_without,
                         double slope) {
  const double original =
      std::inner_product(p_without.begin(), p_without.end(), lines.original.begin(), 0.0);
  const double later =
      std::inner_product(p_without.begin(), p_without.end(), lines.later.begin(), 0.0);
  const double rho = component.replaced_share;
  return std::log(rho / (1 - rho)) +
         slope * (std::log(later + 1e-300) - std::log(original + 1e-300));
}

// ln of the piece's evidence with component `odd` (or none) later and all others original.
std::vector<double> odd_one_out(const std::vector<double>& base_p,
                                const std::vector<ComponentEvidence>& components,
                                const std::vector<Lines>& lines,
                                double slope) {
  std::vector<double> score{0};
  for (std::size_t odd = 0; odd <= components.size(); ++odd) {
    std::vector<double> product = base_p;
    for (std::size_t g = 0; g < components.size(); ++g) {
      const auto& by = g + 1 == odd ? lines[g].later : lines[g].original;
      for (std::size_t t = 0; t < product.size(); ++t) {
        product[t] *= by[t];
      }
    }
    const double log_sum =
        std::log(std::accumulate(product.begin(), product.end(), 0.0) + 1e-300);
    if (odd == 0) {
      score[0] = log_sum;
      continue;
    }
    const double rho = components[odd - 1].replaced_share;
    score.push_back(score[0] + std::log(rho / (1 - rho)) + slope * (log_sum - score[0]));
  }
  const double total = log_sum_exp(score);
  for (double& s : score) {
    s = std::exp(s - total);
  }
  return score;
}

}  // namespace

std::vector<double> later_log(const std::vector<double>& weight_log, int gap) {
  const std::size_t count = weight_log.size();
  const auto step = static_cast<std::size_t>(gap);
  std::vector<double> later = weight_log;
  if (count == 0) {
    return later;
  }
  const double top = *std::max_element(weight_log.begin(), weight_log.end());
  double sum = 0;
  double years = 0;
  for (std::size_t t = count; t-- > step;) {
    sum += std::exp(weight_log[t] - top);
    years += 1;
    later[t - step] = top + std::log(sum / years + 1e-300);
  }
  return later;
}

WeighedComponents weigh_components(const std::vector<double>& base_p,
                                   const std::vector<ComponentEvidence>& components,
                                   ComponentRule rule) {
  std::vector<Lines> lines;
  for (const ComponentEvidence& component : components) {
    if (component.weight_log.size() != base_p.size()) {
      throw BrokenPromise("a component and a curve over different years");
    }
    lines.push_back(lines_of(component, rule.gap));
  }
  std::vector<std::vector<double>> before{base_p};
  for (const Lines& line : lines) {
    before.push_back(before.back());
    multiply_and_scale(before.back(), line.factor);
  }
  WeighedComponents weighed;
  weighed.p = before.back();
  weighed.replaced_p.resize(components.size());
  std::vector<double> after(base_p.size(), 1);
  double none = 1;
  for (std::size_t g = components.size(); g-- > 0;) {
    std::vector<double> without = before[g];
    multiply_and_scale(without, after);
    weighed.replaced_p[g] =
        logistic(replaced_log_odds(components[g], lines[g], without, rule.slope));
    none *= 1 - weighed.replaced_p[g];
    multiply_and_scale(after, lines[g].factor);
  }
  weighed.any_replaced_p = 1 - none;
  weighed.odd_p = odd_one_out(base_p, components, lines, rule.slope);
  return weighed;
}

}  // namespace backmark::evidence
