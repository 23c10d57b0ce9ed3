// Scores of forecasts whose answers are known: how often stated spans hold, how sharp they are,
// and whether their odds may be trusted.
//
// A forecast p over years, an answer S (a span; every year in it alike). The central span of
// share q runs from rank (1-q)/2 to (1+q)/2 of p; a year t holds the ranks from F(t-1) to F(t),
// so its part inside is known without a draw (randomised ranks, averaged). Covered: the mean
// part over the years of S.
//
// Pieces of one lot are no independent trials. Of n pieces in lots of n_l the effective number
// is n^2 / sum n_l^2 (Kish 1965, "Survey Sampling": equal weights, full dependence inside a
// lot). Intervals are Wilson's (1927) with that number.
//
// The rule of trust, for a share q said and s seen:
//   too few         below 20 effective lots;
//   too sure        s lower than q by more than 0.04, and q above Wilson's 99 % interval of s;
//   too cautious    the same upwards;
//   trusted         otherwise.
// Spans of 50, 80 and 95 % are trusted together or not at all: too sure if one of them is, else
// too cautious if one is. Makers: too few below 20 groups; otherwise trusted unless honest odds
// would show as large a calibration error in less than 1 of 100 (odds are drawn true 999 times:
// consistency resampling, Broecker and Smith 2007, "Increasing the reliability of reliability
// diagrams").
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/year.h"
#include "model/calibration.h"

namespace backmark::evidence {

inline constexpr double least_lots = 20;
inline constexpr double slack = 0.04;

struct YearTrial {
  YearSpan axis;
  std::vector<double> p;  // one a year of the axis, sums to 1
  YearSpan stated;        // may stick out of the axis: those years count as missed
  int lot = 0;
  double any_mass = 0;                        // the chance that one common curve gives to S
  std::map<std::string, std::string> groups;  // "form" to "brooch"
};

struct MakerTrial {
  struct Named {
    int maker = 0;
    double p = 0;  // given that it is someone on the list
  };
  std::vector<Named> named;  // likeliest first; sums to at most 1
  int truth = 0;
  bool listed = false;  // whether the true maker could have been named
  double listed_p = 0;  // chance given to "someone on the list"
  int lot = 0;
};

// The part of the answer inside the central span of `share`, 0 to 1.
double covered(const YearTrial& trial, double share);

// n^2 / sum n_l^2.
double effective_lots(const std::vector<int>& lots);

// Wilson's interval at normal quantile z for a share seen in `trials`.
model::SeenShare wilson(double share, double trials, double z);

model::YearCalibration score_years(const std::vector<YearTrial>& trials);
model::MakerCalibration score_makers(const std::vector<MakerTrial>& trials);

// One for each value of each kind of group, in order of kind and name.
std::vector<model::CalibrationGroup> score_groups(const std::vector<YearTrial>& trials);

// Whether the odds may be trusted, one sentence each for years and makers.
std::string verdict(const model::YearCalibration& years);
std::string verdict(const model::MakerCalibration& makers);

}  // namespace backmark::evidence
