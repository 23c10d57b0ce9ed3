// Which answers a look may bring, how likely each is, and roughly what it is worth.
//
// An answer v of character c has at year t the chance
//     pi(v | t) ~ s_v exp(l_v(t)),
// s_v its share of all that is recorded, l_v its evidence curve; on a piece with years p(t),
// pi(v) = sum_t p(t) pi(v | t). The rough worth is the information of v on t under the weight b
// that the stack gives the curve (curves alone; comparanda are not asked):
//     I = sum_v sum_t p(t) pi_b(v | t) log2( pi_b(v | t) / pi_b(v) ),  pi_b ~ s_v exp(b l_v).
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "evidence/reckon.h"

namespace backmark::evidence {

struct PossibleAnswer {
  std::string value;  // as SeenInstead takes it; empty: a number, or none
  std::string words;  // as a person reads it
  bool none = false;  // looked for, not there
  double number = 0;
  double share = 0;               // s_v
  std::vector<double> ratio_log;  // l_v(t), one a year of the axis
};

class LookAnswers {
 public:
  LookAnswers(const model::Show& show, const Reckoning& reckoning);

  // Places of the style table's columns that a person can look at.
  const std::vector<std::size_t>& columns() const { return columns_; }
  const std::vector<PossibleAnswer>& of(std::size_t column) const { return answers_[column]; }
  // Whether the column can apply: not when, among five or more pieces of the same form or with
  // the same value on the same part, it was never seen to have one.
  bool applies(std::size_t piece, std::size_t column) const;
  // pi(v), one an answer; sums to 1.
  std::vector<double> chances(std::size_t column, const std::vector<double>& year_p) const;
  double rough_bits(std::size_t column, const std::vector<double>& year_p) const;

 private:
  void add_answers(std::size_t column);
  void add_numbers(std::size_t column, std::vector<PossibleAnswer>& into);
  void count_company();
  std::vector<double> to_axis(const std::vector<double>& line) const;
  double information(std::size_t column, const std::vector<double>& year_p, double b) const;

  const model::Show& show_;
  const Reckoning& reckoning_;
  const Gathered& gathered_;
  std::vector<std::size_t> columns_;
  std::vector<std::vector<PossibleAnswer>> answers_;  // by column
  // (column, other column, its term): pieces with that term, and of those with a value here.
  std::map<std::tuple<std::size_t, std::size_t, int>, std::pair<int, int>> company_;
};

// The largest rough worth of a missing character, one a piece: for lists. Linear in the pieces.
std::vector<double> rough_gains(const model::Show& show,
                                const Reckoning& reckoning,
                                const model::Beliefs& beliefs);

}  // namespace backmark::evidence
