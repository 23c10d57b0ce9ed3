// What people say about a piece's year, each saying with a reliability, so that one wrong story
// cannot drag a piece.
//
// A statement that is right restricts the year t by a shape f(t) >= 0; one that is empty talk
// says nothing. With reliability r its factor on the year is
//     E(t) = r f(t) / fbar + (1 - r),      fbar = mean of f over the years of the grid,
// so E has mean 1 and, against a flat curve, a statement neither raises nor lowers trust in
// itself. E >= 1 - r everywhere: nothing said can rule a year out, it can only make it dear.
//
// Curves here are plain vectors with one value a year of a YearSpan, first year first.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "base/year.h"

namespace backmark::evidence {

enum class Saying {
  exact,     // inscribed or recorded year: `first`
  about,     // "about `first`", normal with `spread` years
  interval,  // within `first` to `last`, edges falling off over `spread` years
  acquired,  // acquired, awarded or shown in `last`: made some time before, by the lag
  earliest,  // cannot be before `first` (patent, material); use sets in after `spread` years
  latest,    // cannot be after `last`; nothing more is said
};

// What may stand for the reliability when a source has none of its own. Common practice, no
// source.
double usual_reliability(Saying saying);

struct Statement {
  Saying saying = Saying::about;
  int first = 0;  // years, astronomical numbering
  int last = 0;
  // Years: standard deviation (about), soft edge (interval, acquired, latest), mean delay
  // (earliest). 0 is a hard edge.
  double spread = 0;
  double reliability = 0.85;  // 0 to 1
  // Statements with the same non-empty origin share one reliability switch. Those of one kind
  // are retellings and count once (their shapes are averaged); different kinds multiply.
  std::string origin;
};

// How long after making pieces came to where they are: a belief over the mean of an
// exponential.
struct LagBelief {
  std::vector<double> mean_years;  // > 0
  std::vector<double> p;           // sums to 1
};

// A piece whose making and acquisition are both known.
struct LagExample {
  int made = 0;
  int acquired = 0;
  int today = 0;  // the last year in which it could have been acquired and still be known here
};

// Exponential lag whose mean is learned on 31 log-spaced values from 2 to 200 years, from a
// log-normal prior (median 25 years, log sd 0.8), right-cut at `today`. Examples made after
// their acquisition are left out. No example: the prior.
LagBelief learned_lag(const std::vector<LagExample>& examples);

// f(t), largest value 1, one a year of `years`; all 1 if the statement says nothing about them
// (its years lie wholly outside). `acquired` averages over the lag belief, cut at `today`.
std::vector<double> statement_shape(const Statement& statement,
                                    YearSpan years,
                                    const LagBelief& lag,
                                    int today);

// One reliability switch and what it guards.
struct StatementFactor {
  double reliability = 1;
  std::vector<double> shape;         // f / fbar: mean 1 over the grid
  std::vector<std::size_t> members;  // which of the statements, in their order
};

// To mean 1, or all 1 if there is nothing to scale.
void scale_to_mean_one(std::vector<double>& shape);

// r f/fbar + (1 - r), one value a year.
std::vector<double> factor_on_years(const StatementFactor& factor);

// Shapes of statements over one grid. An acquisition's shape averages over many lags and is
// dear, so those that will be asked for again can be kept.
class StatementShapes {
 public:
  StatementShapes() = default;
  StatementShapes(YearSpan years, LagBelief lag, int today)
      : years_(years), lag_(std::move(lag)), today_(today) {}
  // Reckons the shape of an acquisition ahead; other statements are left as they are.
  void keep(const Statement& statement);
  std::vector<double> of(const Statement& statement) const;
  YearSpan years() const { return years_; }

 private:
  YearSpan years_;
  LagBelief lag_;
  int today_ = 0;
  std::map<std::pair<int, double>, std::vector<double>> acquired_;  // by last and spread
};

// One factor per origin (a statement without origin is its own), in order of first mention. The
// reliability of a group is the largest among its members. Retellings that contradict each
// other stay possible side by side; facts of different kinds that contradict each other
// everywhere leave a flat shape.
std::vector<StatementFactor> statement_factors(const std::vector<Statement>& statements,
                                               const StatementShapes& shapes);

// The probability that the factor is empty talk, given `p_without`: the year's probabilities
// from everything else. (1-r) / ((1-r) + r B), B = sum p_without(t) f(t)/fbar: the weight of
// evidence of all else for what was said. B = 1 gives 1 - r back.
double wrong_probability(const StatementFactor& factor, const std::vector<double>& p_without);

struct WeighedYear {
  std::vector<double> p;          // the year given everything, sums to 1
  std::vector<double> wrong_p;    // one a factor: probability that it is empty talk
  std::vector<double> agree_log;  // one a factor: ln B, how much all else speaks for it
};

// Multiplies the factors onto a curve of probabilities `style_p` (sums to 1, same grid). If the
// product is nowhere positive, style_p comes back and every factor keeps its prior doubt.
WeighedYear weigh_statements(const std::vector<double>& style_p,
                             const std::vector<StatementFactor>& factors);

}  // namespace backmark::evidence
