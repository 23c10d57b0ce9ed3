#include "evidence/statement.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace backmark::evidence {
namespace {

double mean_of(const std::vector<double>& x) {
  return std::accumulate(x.begin(), x.end(), 0.0) / static_cast<double>(x.size());
}

// 1 at and inside the edge, a half-normal fall outside; `outside` is years beyond it.
double soft_edge(double outside, double spread) {
  if (outside <= 0) {
    return 1;
  }
  if (spread <= 0) {
    return 0;
  }
  const double z = outside / spread;
  return std::exp(-0.5 * z * z);
}

// Chance of lag `years` under a yearly geometric with this mean, given that it is at most
// `cut`.
double lag_chance(double years, double cut, double mean) {
  const double rate = 1 / mean;
  return std::exp(-rate * years) * (1 - std::exp(-rate)) / (1 - std::exp(-rate * (cut + 1)));
}

double acquired_shape(const Statement& statement, int year, const LagBelief& lag, int today) {
  // A few years' slip in the register is allowed for by `spread`, as if acquired at once.
  const double lag_years = std::max(0, statement.last - year);
  const double cut = std::max({0, today - year, statement.last - year});
  double sum = 0;
  for (std::size_t i = 0; i < lag.p.size(); ++i) {
    sum += lag.p[i] * lag_chance(lag_years, cut, lag.mean_years[i]);
  }
  return sum * soft_edge(year - statement.last, statement.spread);
}

double shape_at(const Statement& statement, int year, const LagBelief& lag, int today) {
  switch (statement.saying) {
    case Saying::exact:
      return soft_edge(std::abs(year - statement.first), statement.spread);
    case Saying::about:
      return soft_edge(std::abs(year - statement.first), std::max(0.5, statement.spread));
    case Saying::interval:
      return soft_edge(std::max(statement.first - year, year - statement.last),
                       statement.spread);
    case Saying::acquired:
      return acquired_shape(statement, year, lag, today);
    case Saying::earliest:
      if (year < statement.first) {
        return 0;
      }
      return statement.spread <= 0
                 ? 1
                 : 1 - std::exp(-(year - statement.first + 1) / statement.spread);
    case Saying::latest:
      return soft_edge(year - statement.last, statement.spread);
  }
  throw BrokenPromise("a statement of no known kind");
}

}  // namespace

void scale_to_mean_one(std::vector<double>& shape) {
  const double mean = mean_of(shape);
  for (double& x : shape) {
    x = mean > 0 ? x / mean : 1;
  }
}

namespace {

// The shapes of one group: retellings (same kind) averaged, kinds multiplied.
std::vector<double> pooled_shape(const std::vector<Statement>& statements,
                                 const std::vector<std::size_t>& members,
                                 const std::vector<std::vector<double>>& shapes,
                                 std::size_t length) {
  std::map<Saying, std::vector<double>> by_kind;
  for (const std::size_t i : members) {
    auto& sum = by_kind[statements[i].saying];
    sum.resize(length, 0);
    const double mean = mean_of(shapes[i]);
    for (std::size_t t = 0; t < length; ++t) {
      sum[t] += shapes[i][t] / mean;
    }
  }
  std::vector<double> product(length, 1);
  for (auto& [kind, sum] : by_kind) {
    for (std::size_t t = 0; t < length; ++t) {
      product[t] *= sum[t];
    }
  }
  scale_to_mean_one(product);
  return product;
}

}  // namespace

double usual_reliability(Saying saying) {
  switch (saying) {
    case Saying::exact:
      return 0.98;
    case Saying::about:
    case Saying::interval:
      return 0.85;
    case Saying::acquired:
    case Saying::latest:
      return 0.97;
    case Saying::earliest:
      return 0.97;
  }
  throw BrokenPromise("a statement of no known kind");
}

LagBelief learned_lag(const std::vector<LagExample>& examples) {
  const int steps = 31;
  std::vector<double> weight_log;
  LagBelief belief;
  for (int i = 0; i < steps; ++i) {
    const double mean = 2 * std::pow(100, i / (steps - 1.0));
    const double z = std::log(mean / 25) / 0.8;
    double log_p = -0.5 * z * z;
    for (const LagExample& example : examples) {
      const int lag = example.acquired - example.made;
      if (lag >= 0) {
        const int cut = std::max(lag, example.today - example.made);
        log_p += std::log(lag_chance(lag, cut, mean));
      }
    }
    belief.mean_years.push_back(mean);
    weight_log.push_back(log_p);
  }
  const double total = log_sum_exp(weight_log);
  for (const double w : weight_log) {
    belief.p.push_back(std::exp(w - total));
  }
  return belief;
}

std::vector<double> statement_shape(const Statement& statement,
                                    YearSpan years,
                                    const LagBelief& lag,
                                    int today) {
  std::vector<double> shape;
  shape.reserve(static_cast<std::size_t>(years.length()));
  for (int year = years.first.value; year <= years.last.value; ++year) {
    shape.push_back(shape_at(statement, year, lag, today));
  }
  const double top = *std::max_element(shape.begin(), shape.end());
  for (double& x : shape) {
    x = top > 0 ? x / top : 1;
  }
  return shape;
}

std::vector<double> factor_on_years(const StatementFactor& factor) {
  std::vector<double> e;
  e.reserve(factor.shape.size());
  for (const double f : factor.shape) {
    e.push_back(factor.reliability * f + (1 - factor.reliability));
  }
  return e;
}

void StatementShapes::keep(const Statement& statement) {
  if (statement.saying == Saying::acquired) {
    auto& kept = acquired_[{statement.last, statement.spread}];
    if (kept.empty()) {
      kept = statement_shape(statement, years_, lag_, today_);
    }
  }
}

std::vector<double> StatementShapes::of(const Statement& statement) const {
  if (statement.saying == Saying::acquired) {
    const auto kept = acquired_.find({statement.last, statement.spread});
    if (kept != acquired_.end()) {
      return kept->second;
    }
  }
  return statement_shape(statement, years_, lag_, today_);
}

std::vector<StatementFactor> statement_factors(const std::vector<Statement>& statements,
                                               const StatementShapes& all_shapes) {
  std::vector<std::vector<double>> shapes;
  std::vector<StatementFactor> factors;
  std::map<std::string, std::size_t> place_of_origin;
  for (std::size_t i = 0; i < statements.size(); ++i) {
    shapes.push_back(all_shapes.of(statements[i]));
    const std::string& origin = statements[i].origin;
    const auto found = origin.empty() ? place_of_origin.end() : place_of_origin.find(origin);
    if (found != place_of_origin.end()) {
      StatementFactor& group = factors[found->second];
      group.members.push_back(i);
      group.reliability = std::max(group.reliability, statements[i].reliability);
      continue;
    }
    if (!origin.empty()) {
      place_of_origin[origin] = factors.size();
    }
    factors.push_back({statements[i].reliability, {}, {i}});
  }
  for (StatementFactor& factor : factors) {
    factor.shape = pooled_shape(statements, factor.members, shapes,
                                static_cast<std::size_t>(all_shapes.years().length()));
  }
  return factors;
}

double wrong_probability(const StatementFactor& factor, const std::vector<double>& p_without) {
  double b = 0;
  for (std::size_t t = 0; t < p_without.size(); ++t) {
    b += p_without[t] * factor.shape[t];
  }
  const double empty = 1 - factor.reliability;
  const double right = factor.reliability * b;
  return empty + right > 0 ? empty / (empty + right) : 0;
}

namespace {

bool scale_to_sum_one(std::vector<double>& p) {
  const double total = std::accumulate(p.begin(), p.end(), 0.0);
  if (!(total > 0)) {
    return false;
  }
  for (double& x : p) {
    x /= total;
  }
  return true;
}

void multiply(std::vector<double>& p, const std::vector<double>& by) {
  for (std::size_t t = 0; t < p.size(); ++t) {
    p[t] *= by[t];
  }
}

}  // namespace

WeighedYear weigh_statements(const std::vector<double>& style_p,
                             const std::vector<StatementFactor>& factors) {
  for (const StatementFactor& factor : factors) {
    if (factor.shape.size() != style_p.size()) {
      throw BrokenPromise("a statement and a curve over different years");
    }
  }
  // before[j]: the curve with factors 0..j-1, rescaled; after: the product of those behind j.
  // No factor is ever divided out, so a hard edge costs nothing.
  std::vector<std::vector<double>> before{style_p};
  bool possible = scale_to_sum_one(before.front());
  for (const StatementFactor& factor : factors) {
    std::vector<double> next = before.back();
    multiply(next, factor_on_years(factor));
    possible = scale_to_sum_one(next) && possible;
    before.push_back(std::move(next));
  }
  WeighedYear weighed;
  weighed.p = possible ? before.back() : style_p;
  weighed.wrong_p.resize(factors.size());
  weighed.agree_log.resize(factors.size());
  std::vector<double> after(style_p.size(), 1);
  for (std::size_t j = factors.size(); j-- > 0;) {
    std::vector<double> without = before[j];
    multiply(without, after);
    double b = 1;
    if (possible && scale_to_sum_one(without)) {
      b = std::inner_product(without.begin(), without.end(), factors[j].shape.begin(), 0.0);
      weighed.wrong_p[j] = wrong_probability(factors[j], without);
    } else {
      weighed.wrong_p[j] = 1 - factors[j].reliability;
    }
    weighed.agree_log[j] = std::log(b);
    multiply(after, factor_on_years(factors[j]));
    scale_to_sum_one(after);
  }
  return weighed;
}

}  // namespace backmark::evidence
