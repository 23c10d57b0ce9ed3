#include "evidence/together.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/random.h"

namespace backmark::evidence {

namespace {

// The common factor from -6 to 6 by the trapezoid rule, whose error is negligible for a normal
// weight at this step.
constexpr double factor_end = 6;
constexpr int factor_steps = 60;  // either way

struct Factors {
  std::vector<double> z;
  std::vector<double> weight;  // sums to 1
};

const Factors& factors() {
  static const Factors all = [] {
    Factors made;
    double sum = 0;
    for (int step = -factor_steps; step <= factor_steps; ++step) {
      const double z = step * factor_end / factor_steps;
      made.z.push_back(z);
      made.weight.push_back(std::exp(-0.5 * z * z));
      sum += made.weight.back();
    }
    for (double& weight : made.weight) {
      weight /= sum;
    }
    return made;
  }();
  return all;
}

double polynomial(const double* c, int count, double x) {
  double sum = 0;
  for (int i = 0; i < count; ++i) {
    sum = sum * x + c[i];
  }
  return sum;
}

std::vector<double> cumulated_p(const std::vector<double>& p) {
  std::vector<double> sums(p.size());
  double sum = 0;
  for (std::size_t t = 0; t < p.size(); ++t) {
    sum += p[t];
    sums[t] = sum;
  }
  return sums;
}

}  // namespace

double normal_below(double z) {
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

double normal_quantile(double p) {
  static const double a[] = {-3.969683028665376e+01, 2.209460984245205e+02,
                             -2.759285104469687e+02, 1.383577518672690e+02,
                             -3.066479806614716e+01, 2.506628277459239e+00};
  static const double b[] = {-5.447609879822406e+01, 1.615858368580409e+02,
                             -1.556989798598866e+02, 6.680131188771972e+01,
                             -1.328068155288572e+01, 1};
  static const double c[] = {-7.784894002430293e-03, -3.223964580411365e-01,
                             -2.400758277161838e+00, -2.549732539343734e+00,
                             4.374664141464968e+00,  2.938163982698783e+00};
  static const double d[] = {7.784695709041462e-03, 3.224671290700398e-01,
                             2.445134137142996e+00, 3.754408661907416e+00, 1};
  constexpr double tail = 0.02425;
  if (p < tail) {
    const double q = std::sqrt(-2 * std::log(std::max(p, 1e-300)));
    return polynomial(c, 6, q) / polynomial(d, 5, q);
  }
  if (p > 1 - tail) {
    return -normal_quantile(1 - p);
  }
  const double q = p - 0.5;
  return q * polynomial(a, 6, q * q) / polynomial(b, 6, q * q);
}

double any_of(const std::vector<double>& p, double leaning) {
  if (leaning <= 0) {
    double none = 1;
    for (const double one : p) {
      none *= 1 - one;
    }
    return 1 - none;
  }
  return AnyOf(p, leaning).chance();
}

AnyOf::AnyOf(std::vector<double> p, double leaning)
    : p_(std::move(p)), leaning_(leaning), none_log_(factors().z.size(), 0) {
  for (const double one : p_) {
    certain_ += one >= 1 ? 1 : 0;
    if (one > 0 && one < 1) {
      const std::vector<double> none = none_log_of(one);
      for (std::size_t f = 0; f < none.size(); ++f) {
        none_log_[f] += none[f];
      }
    }
  }
}

double AnyOf::chance() const {
  return chance_of(certain_, none_log_);
}

double AnyOf::with(std::size_t i, double p) const {
  const bool was_certain = p_[i] >= 1;
  const std::vector<double> was = none_log_of(was_certain ? 0 : p_[i]);
  const std::vector<double> is = none_log_of(p >= 1 ? 0 : p);
  std::vector<double> none = none_log_;
  for (std::size_t f = 0; f < none.size(); ++f) {
    none[f] += is[f] - was[f];
  }
  return chance_of(certain_ - (was_certain ? 1 : 0) + (p >= 1 ? 1 : 0), none);
}

double AnyOf::chance_of(std::size_t certain, const std::vector<double>& none_log) const {
  if (certain > 0) {
    return 1;
  }
  const Factors& over = factors();
  double none = 0;
  for (std::size_t f = 0; f < none_log.size(); ++f) {
    none += over.weight[f] * std::exp(none_log[f]);
  }
  return 1 - none;
}

// ln of the chance that a piece does not happen, by value of the common factor; 0 <= p < 1.
std::vector<double> AnyOf::none_log_of(double p) const {
  const std::vector<double>& z = factors().z;
  std::vector<double> none_log(z.size(), 0);
  if (p <= 0) {
    return none_log;
  }
  const double bound = normal_quantile(p);
  for (std::size_t f = 0; f < z.size(); ++f) {
    const double at = (bound - std::sqrt(leaning_) * z[f]) / std::sqrt(1 - leaning_);
    none_log[f] = std::log(std::max(normal_below(-at), 1e-300));
  }
  return none_log;
}

std::vector<double> chance_oldest(const std::vector<Racer>& racers) {
  std::vector<double> chance(racers.size(), 0);
  if (racers.empty()) {
    return chance;
  }
  const std::size_t years = racers.front().year_p->size();
  std::vector<double> later(racers.size(), 1);  // each: made after the year before
  for (std::size_t t = 0; t < years; ++t) {
    // All others not older: those of this very year share it. Over a year taken as even inside,
    // the chance that racer i comes first is the integral of p_i prod (later_j - s p_j) ds.
    static const double at[] = {0.06943184420297371, 0.33000947820757187, 0.6699905217924281,
                                0.9305681557970263};
    static const double share[] = {0.17392742256872692, 0.32607257743127307,
                                   0.32607257743127307, 0.17392742256872692};
    for (int s = 0; s < 4; ++s) {
      double log_all = 0;
      for (std::size_t j = 0; j < racers.size(); ++j) {
        log_all += std::log(std::max(1e-300, later[j] - at[s] * (*racers[j].year_p)[t]));
      }
      for (std::size_t i = 0; i < racers.size(); ++i) {
        const double p = (*racers[i].year_p)[t];
        const double own = std::max(1e-300, later[i] - at[s] * p);
        chance[i] += share[s] * p * std::exp(log_all - std::log(own));
      }
    }
    for (std::size_t j = 0; j < racers.size(); ++j) {
      later[j] = std::max(0.0, later[j] - (*racers[j].year_p)[t]);
    }
  }
  double sum = 0;
  for (const double one : chance) {
    sum += one;
  }
  for (double& one : chance) {
    one /= sum;
  }
  return chance;
}

double oldest_is_by(const std::vector<Racer>& racers) {
  const std::vector<double> chance = chance_oldest(racers);
  double p = 0;
  for (std::size_t i = 0; i < racers.size(); ++i) {
    p += chance[i] * racers[i].by;
  }
  return p;
}

double oldest_is_by(const std::vector<Racer>& racers,
                    double leaning,
                    int draws,
                    std::uint64_t seed) {
  if (racers.empty()) {
    return 0;
  }
  std::vector<std::vector<double>> sums;
  sums.reserve(racers.size());
  for (const Racer& racer : racers) {
    sums.push_back(cumulated_p(*racer.year_p));
  }
  Random random(seed);
  double by = 0;
  for (int draw = 0; draw < draws; ++draw) {
    const double z = random.normal();
    double oldest = 1e300;
    double hand = 0;
    for (std::size_t i = 0; i < racers.size(); ++i) {
      const double rank =
          normal_below(std::sqrt(leaning) * z + std::sqrt(1 - leaning) * random.normal());
      const auto at = std::lower_bound(sums[i].begin(), sums[i].end(), rank);
      const double year = static_cast<double>(at - sums[i].begin()) + random.uniform();
      if (year < oldest) {
        oldest = year;
        hand = racers[i].by;
      }
    }
    by += hand / draws;
  }
  return by;
}

}  // namespace backmark::evidence
