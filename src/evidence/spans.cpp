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

// With the largest 1, and the logs moved to match.
std::vector<double> exponentials(std::vector<double>& logs) {
  const double top = *std::max_element(logs.begin(), logs.end());
  std::vector<double> x;
  for (double& log : logs) {
    log -= top;
    x.push_back(std::exp(log));
  }
  return x;
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
  start_ = exponentials(start_log_);
  end_ = exponentials(end_log_);
  length_ = exponentials(length_log_);
  double total = 0;
  for (int s = 0; s < years_; ++s) {
    double ends = 0;
    for (int e = s; e < std::min(years_, s + longest_); ++e) {
      ends += end_[static_cast<std::size_t>(e)] * length_[static_cast<std::size_t>(e - s + 1)];
    }
    total += start_[static_cast<std::size_t>(s)] * ends;
  }
  for (std::size_t s = 0; s < start_.size(); ++s) {
    start_[s] /= total;
    start_log_[s] -= std::log(total);
  }
}

namespace {

// Weights of all spans of the table, start by start, up to one factor. Each maker has at most a
// few dozen pieces of which none weighs a span below stray / years, so products stay within
// range; after each piece they are rescaled all the same.
std::vector<double> span_weights(const SpanTable& table,
                                 const std::vector<std::vector<double>>& piece_years,
                                 double stray) {
  const int count = table.years();
  std::vector<double> weight;
  for (int s = 0; s < count; ++s) {
    for (int e = s; e < std::min(count, s + table.longest()); ++e) {
      weight.push_back(table.at(s, e));
    }
  }
  std::vector<double> share(static_cast<std::size_t>(table.longest()) + 1);
  for (std::size_t length = 1; length < share.size(); ++length) {
    share[length] = (1 - stray) / static_cast<double>(length);
  }
  for (const auto& sum : running_sums(piece_years)) {
    double total = 0;
    std::size_t at = 0;
    for (int s = 0; s < count; ++s) {
      const double* const ends = sum.data() + s + 1;
      const int lengths = std::min(count - s, table.longest());
      for (int length = 0; length < lengths; ++length) {
        const double inside = ends[length] - ends[-1];
        weight[at] *= inside * share[static_cast<std::size_t>(length) + 1] + stray / count;
        total += weight[at++];
      }
    }
    for (double& w : weight) {
      w /= total;
    }
  }
  return weight;
}

}  // namespace

SpanBelief span_belief(const SpanPrior& prior,
                       YearSpan years,
                       const std::vector<std::vector<double>>& piece_years,
                       double stray) {
  const SpanTable table(prior, years);
  const int count = years.length();
  const std::vector<double> weight = span_weights(table, piece_years, stray);
  SpanBelief belief;
  const auto size = static_cast<std::size_t>(count);
  belief.start_p.resize(size);
  belief.end_p.resize(size);
  // Differences of year_p: each span adds w/L at its start and takes it away after its end.
  std::vector<double> step(size + 1, 0);
  std::vector<double> share(static_cast<std::size_t>(table.longest()));
  for (std::size_t i = 0; i < share.size(); ++i) {
    share[i] = 1 / static_cast<double>(i + 1);
  }
  const double* p = weight.data();
  for (std::size_t s = 0; s < size; ++s) {
    const std::size_t lengths = std::min(size - s, share.size());
    double* const ends = belief.end_p.data() + s;
    double* const after = step.data() + s + 1;
    for (std::size_t i = 0; i < lengths; ++i) {
      ends[i] += p[i];
      after[i] -= p[i] * share[i];
      belief.start_p[s] += p[i];
      step[s] += p[i] * share[i];
    }
    p += lengths;
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
