// Years, spans of years and curves over them.
#pragma once

#include <algorithm>
#include <compare>
#include <cstdint>
#include <vector>

#include "base/result.h"

namespace backmark {

// A year of the proleptic Gregorian calendar in astronomical numbering: 0 is 1 BCE, -1 is 2
// BCE.
struct Year {
  std::int32_t value = 0;

  friend auto operator<=>(Year, Year) = default;
  friend Year operator+(Year year, int years) { return {year.value + years}; }
  friend Year operator-(Year year, int years) { return {year.value - years}; }
  friend int operator-(Year later, Year earlier) { return later.value - earlier.value; }
};

// Years from first to last, both included; first <= last.
struct YearSpan {
  Year first;
  Year last;

  friend bool operator==(YearSpan, YearSpan) = default;
  // Number of years, at least 1.
  int length() const { return last - first + 1; }
  bool contains(Year year) const { return first <= year && year <= last; }
  bool overlaps(YearSpan other) const { return first <= other.last && other.first <= last; }
};

// Weights over the years of a span: one natural-log weight a year, unnormalised.
// weight_log.size() == span.length() always.
struct Curve {
  YearSpan span;
  std::vector<double> weight_log;
};

// Probabilities over the years of a curve: non-negative, summing to 1.
std::vector<double> normalised(const Curve& curve);

// The earliest year whose cumulative probability reaches `share` (0 < share < 1).
// `p` has one entry a year of `span` and sums to 1.
Year quantile(YearSpan span, const std::vector<double>& p, double share);

// log(sum(exp(x))) without overflow; -infinity for an empty or all -infinity list.
double log_sum_exp(const std::vector<double>& x);

}  // namespace backmark
