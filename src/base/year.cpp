#include "base/year.h"

#include <cmath>
#include <limits>

namespace backmark {

double log_sum_exp(const std::vector<double>& x) {
  double top = -std::numeric_limits<double>::infinity();
  for (const double value : x) {
    top = std::max(top, value);
  }
  if (!std::isfinite(top)) {
    return top;
  }
  double sum = 0;
  for (const double value : x) {
    sum += std::exp(value - top);
  }
  return top + std::log(sum);
}

std::vector<double> normalised(const Curve& curve) {
  if (curve.weight_log.size() != static_cast<std::size_t>(curve.span.length())) {
    throw BrokenPromise("a curve has a weight for every year of its span");
  }
  const double total = log_sum_exp(curve.weight_log);
  std::vector<double> p(curve.weight_log.size());
  std::transform(curve.weight_log.begin(), curve.weight_log.end(), p.begin(),
                 [total](double w) { return std::exp(w - total); });
  return p;
}

Year quantile(YearSpan span, const std::vector<double>& p, double share) {
  double sum = 0;
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    sum += p[cell];
    if (sum >= share - 1e-12) {
      return span.first + static_cast<int>(cell);
    }
  }
  return span.last;
}

}  // namespace backmark
