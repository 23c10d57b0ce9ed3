#include "evidence/spans.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace backmark::evidence {
namespace {

constexpr double flat_share = 0.02;

// ln of normal-plus-flat around `centre`, one a year; all 0 if nothing is documented.
std::vector<double> documented_log(std::optional<int> centre, double sd, YearSpan years) {
  const auto length = static_cast<std::size_t>(years.length());
  std::vector<double> log_p(length, 0);
  if (!centre) {
    return log_p;
  }
  for (std::size_t t = 0; t < length; ++t) {
    const double z = (years.first.value + static_cast<double>(t) - *centre) / sd;
    const double normal = std::exp(-0.5 * z * z) / (sd * std::sqrt(2 * 3.14159265358979323846));
    log_p[t] = std::log((1 - flat_share) * normal + flat_share / static_cast<double>(length));
  }
  return log_p;
}

std::vector<std::vector<double>> running_sums(const std::vector<std::vector<double>>& pieces) {
  std::vector<std::vector<double>> sums;
  for (const auto& q : pieces) {
    std::vector<double> sum(q.size() + 1, 0);
    for (std::size_t t = 0; t < q.size(); ++t) {
      sum[t + 1] = sum[t] + q[t];
    }
    sums.push_back(std::move(sum));
  }
  return sums;
}

}  // namespace

SpanTable::SpanTable(const SpanPrior& prior, YearSpan years)
    : years_(years.length()),
      longest_(
          std::min(years.length(), static_cast<int>(prior.length_mean + 5 * prior.length_sd))),
      start_log_(documented_log(prior.start, prior.start_sd, years)),
      end_log_(documented_log(prior.end, prior.end_sd, years)) {
  const double shape =
      prior.length_mean * prior.length_mean / (prior.length_sd * prior.length_sd);
  const double rate = shape / prior.length_mean;
  length_log_.push_back(-1e300);
  for (int length = 1; length <= longest_; ++length) {
    length_log_.push_back((shape - 1) * std::log(length) - rate * length);
  }
  std::vector<double> all;
  for (int s = 0; s < years_; ++s) {
    for (int e = s; e < std::min(years_, s + longest_); ++e) {
      all.push_back(log_at(s, e));
    }
  }
  const double total = log_sum_exp(all);
  for (double& x : start_log_) {
    x -= total;
  }
}

SpanBelief span_belief(const SpanPrior& prior,
                       YearSpan years,
                       const std::vector<std::vector<double>>& piece_years,
                       double stray) {
  const SpanTable table(prior, years);
  const int count = years.length();
  const auto sums = running_sums(piece_years);
  std::vector<double> weight_log;
  for (int s = 0; s < count; ++s) {
    for (int e = s; e < std::min(count, s + table.longest()); ++e) {
      double w = table.log_at(s, e);
      const double length = e - s + 1;
      for (const auto& sum : sums) {
        const double inside =
            sum[static_cast<std::size_t>(e) + 1] - sum[static_cast<std::size_t>(s)];
        w += std::log((1 - stray) * inside / length + stray / count + 1e-300);
      }
      weight_log.push_back(w);
    }
  }
  const double total = log_sum_exp(weight_log);
  SpanBelief belief;
  const auto size = static_cast<std::size_t>(count);
  belief.start_p.resize(size);
  belief.end_p.resize(size);
  // Differences of year_p: each span adds w/L at its start and takes it away after its end.
  std::vector<double> step(size + 1, 0);
  std::size_t next = 0;
  for (int s = 0; s < count; ++s) {
    for (int e = s; e < std::min(count, s + table.longest()); ++e) {
      const double p = std::exp(weight_log[next++] - total);
      belief.start_p[static_cast<std::size_t>(s)] += p;
      belief.end_p[static_cast<std::size_t>(e)] += p;
      step[static_cast<std::size_t>(s)] += p / (e - s + 1);
      step[static_cast<std::size_t>(e) + 1] -= p / (e - s + 1);
    }
  }
  double level = 0;
  for (std::size_t t = 0; t < size; ++t) {
    level += step[t];
    belief.year_p.push_back(std::max(0.0, level));
  }
  return belief;
}

std::vector<double> span_factor(const SpanBelief& belief, double stray) {
  std::vector<double> factor;
  const auto count = static_cast<double>(belief.year_p.size());
  for (const double p : belief.year_p) {
    factor.push_back((1 - stray) * p * count + stray);
  }
  return factor;
}

}  // namespace backmark::evidence
