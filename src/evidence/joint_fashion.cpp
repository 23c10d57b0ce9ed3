#include "evidence/joint_fashion.h"

#include <algorithm>
#include <cmath>

#include "evidence/draw.h"
#include "evidence/polya_gamma.h"

namespace backmark::evidence {
namespace {

double first_mean(int values, int k) {
  return -std::log(values - 1.0 - k);
}

// A walk with Gaussian evidence: precision `omega` and shift `kappa` a year.
struct Walk {
  std::vector<double> omega;
  std::vector<double> kappa;
  double mean = 0;
  double first_sd = 1.5;
};

// Forward elimination of the tridiagonal posterior precision for one step size.
struct Eliminated {
  std::vector<double> pivot;
  std::vector<double> shift;
  double off = 0;
  double evidence_log = 0;  // up to what does not depend on the step
};

Eliminated eliminate(const Walk& walk, double step) {
  const std::size_t years = walk.omega.size();
  const double link = 1 / (step * step);
  const double first = 1 / (walk.first_sd * walk.first_sd);
  Eliminated e;
  e.off = -link;
  e.pivot.resize(years);
  e.shift.resize(years);
  double determinant = 1;
  double quadratic = 0;
  double log_sum = 0;
  double carry = 0;
  double carry_shift = 0;
  for (std::size_t t = 0; t < years; ++t) {
    double diagonal = walk.omega[t] + (t == 0 ? first : link) + (t + 1 < years ? link : 0);
    double shift = walk.kappa[t] + (t == 0 ? first * walk.mean : 0);
    diagonal -= carry * link;
    shift += carry_shift;
    e.pivot[t] = diagonal;
    e.shift[t] = shift;
    const double inverse = 1 / diagonal;
    carry = link * inverse;
    carry_shift = carry * shift;
    quadratic += shift * shift * inverse;
    // Pivots are about 1/step^2: taken relative to it, 16 at a time, they neither over- nor
    // underflow.
    determinant *= diagonal * step * step;
    if (t % 16 == 15) {
      log_sum += std::log(determinant);
      determinant = 1;
    }
  }
  log_sum += std::log(determinant);
  // |A| = product of pivots; relative to step^-2 each, and the prior brings step^-(T-1).
  const double scale = std::log(step);
  e.evidence_log = 0.5 * quadratic - 0.5 * log_sum + scale;
  return e;
}

void draw_walk(const Eliminated& e, double* x, Random& random) {
  const std::size_t years = e.pivot.size();
  for (std::size_t t = years; t-- > 0;) {
    const double mean = (e.shift[t] - (t + 1 < years ? e.off * x[t + 1] : 0)) / e.pivot[t];
    x[t] = mean + random.normal() / std::sqrt(e.pivot[t]);
  }
}

}  // namespace

std::vector<double> fashion_of(const Sticks& sticks) {
  const auto years = static_cast<std::size_t>(sticks.years);
  const auto values = static_cast<std::size_t>(sticks.values);
  std::vector<double> p(values * years);
  for (std::size_t t = 0; t < years; ++t) {
    double left = 1;
    for (std::size_t k = 0; k + 1 < values; ++k) {
      const double taken = 1 / (1 + std::exp(-sticks.log_odds[k * years + t]));
      p[k * years + t] = left * taken;
      left *= 1 - taken;
    }
    p[(values - 1) * years + t] = left;
  }
  return p;
}

Sticks draw_sticks_prior(int values, int years, double step, double first_sd, Random& random) {
  Sticks sticks{values, years, {}};
  for (int k = 0; k + 1 < values; ++k) {
    double x = first_mean(values, k) + first_sd * random.normal();
    for (int t = 0; t < years; ++t) {
      sticks.log_odds.push_back(x);
      x += step * random.normal();
    }
  }
  return sticks;
}

std::size_t redraw_sticks(Sticks& sticks,
                          const std::vector<int>& counts,
                          const std::vector<double>& steps,
                          double first_sd,
                          Random& random) {
  const auto years = static_cast<std::size_t>(sticks.years);
  const auto values = static_cast<std::size_t>(sticks.values);
  std::vector<int> left(years, 0);
  for (std::size_t v = 0; v < values; ++v) {
    for (std::size_t t = 0; t < years; ++t) {
      left[t] += counts[v * years + t];
    }
  }
  std::vector<Walk> walks;
  for (std::size_t k = 0; k + 1 < values; ++k) {
    Walk walk{std::vector<double>(years), std::vector<double>(years),
              first_mean(sticks.values, static_cast<int>(k)), first_sd};
    for (std::size_t t = 0; t < years; ++t) {
      const int taken = counts[k * years + t];
      walk.omega[t] = draw_polya_gamma(left[t], sticks.log_odds[k * years + t], random);
      walk.kappa[t] = taken - 0.5 * left[t];
      left[t] -= taken;
    }
    walks.push_back(std::move(walk));
  }
  std::vector<std::vector<Eliminated>> by_step;
  std::vector<double> evidence;
  for (const double step : steps) {
    std::vector<Eliminated> all;
    double log_sum = 0;
    for (const Walk& walk : walks) {
      all.push_back(eliminate(walk, step));
      log_sum += all.back().evidence_log;
    }
    by_step.push_back(std::move(all));
    evidence.push_back(log_sum);
  }
  const std::size_t chosen = draw_log(std::move(evidence), random);
  for (std::size_t k = 0; k + 1 < values; ++k) {
    draw_walk(by_step[chosen][k], sticks.log_odds.data() + k * years, random);
  }
  return chosen;
}

}  // namespace backmark::evidence
