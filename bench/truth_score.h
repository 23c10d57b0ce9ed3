// How right an answer is, and how right about how right it is, where the truth is known.
#pragma once

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "base/random.h"
#include "base/text.h"
#include "model/belief.h"

namespace backmark::bench {

struct Score {
  double log_year = 0, error = 0, pieces = 0;
  double inside[3] = {0, 0, 0};
  std::vector<std::pair<double, bool>> maker_calls;  // chance given to the first maker, right
  std::vector<std::pair<double, bool>> stories;      // chance of empty talk, it is
  std::vector<std::pair<double, bool>> parts;        // chance of a later part, it is
  double rhat = 0, ess = 1e9, settled = 0, shows = 0, seconds = 0;
  double story_area = 0, part_area = 0;  // sums over shows
  std::size_t stories_before = 0, parts_before = 0;
};

// The chance that a wrong one is given more doubt than a right one.
inline double area(std::vector<std::pair<double, bool>> calls) {
  std::sort(calls.begin(), calls.end());
  double right = 0;
  double wins = 0;
  double wrong = 0;
  for (std::size_t i = 0; i < calls.size();) {
    double here_wrong = 0;
    double here_right = 0;
    std::size_t j = i;
    for (; j < calls.size() && calls[j].first == calls[i].first; ++j) {
      (calls[j].second ? here_wrong : here_right) += 1;
    }
    wins += here_wrong * (right + 0.5 * here_right);
    right += here_right;
    wrong += here_wrong;
    i = j;
  }
  return right * wrong > 0 ? wins / (right * wrong) : 0;
}

// A show is done: its areas by itself. Shows differ in what is learned of a source, so pooling
// them would compare doubts across shows.
inline void close_show(Score& score) {
  const auto since = [](const std::vector<std::pair<double, bool>>& calls, std::size_t before) {
    return area({calls.begin() + static_cast<std::ptrdiff_t>(before), calls.end()});
  };
  score.story_area += since(score.stories, score.stories_before);
  score.part_area += since(score.parts, score.parts_before);
  score.stories_before = score.stories.size();
  score.parts_before = score.parts.size();
  score.shows += 1;
}

// Expected calibration error over tenths of the chance given.
inline double calibration_error(const std::vector<std::pair<double, bool>>& calls) {
  double given[10] = {};
  double seen[10] = {};
  for (const auto& [p, right] : calls) {
    const auto bin = std::min<std::size_t>(9, static_cast<std::size_t>(p * 10));
    given[bin] += p;
    seen[bin] += right ? 1 : 0;
  }
  double error = 0;
  if (calls.empty()) {
    return 0;
  }
  for (std::size_t bin = 0; bin < 10; ++bin) {
    error += std::abs(given[bin] - seen[bin]) / static_cast<double>(calls.size());
  }
  return error;
}

inline void score_year(const model::YearBelief& belief,
                       int year,
                       Random& random,
                       Score& score) {
  double below = 0;
  double here = 0;
  for (std::size_t t = 0; t < belief.p.size(); ++t) {
    const int at = belief.span.first.value + static_cast<int>(t);
    below += at < year ? belief.p[t] : 0;
    here = at == year ? belief.p[t] : here;
  }
  const double rank = below + here * random.uniform();
  const double shares[3] = {0.5, 0.8, 0.95};
  for (int k = 0; k < 3; ++k) {
    score.inside[k] += std::abs(rank - 0.5) <= shares[k] / 2 ? 1 : 0;
  }
  score.log_year += std::log(std::max(here, 1e-6));
  score.error += std::abs(belief.at(0.5).value - year);
  score.pieces += 1;
}

// Of the parts called later with more than an even chance: how many, and the share that are.
inline std::pair<int, double> called(const std::vector<std::pair<double, bool>>& calls) {
  int count = 0;
  double right = 0;
  for (const auto& [p, is] : calls) {
    count += p > 0.5 ? 1 : 0;
    right += p > 0.5 && is ? 1 : 0;
  }
  return {count, count > 0 ? right / count : 0};
}

inline void print(const char* name, const Score& s) {
  fmt::print(
      "{}: undated {:.0f}, log {:.3f}, cover {:.3f} {:.3f} {:.3f}, mean error {:.2f} years, "
      "maker ECE {:.3f}, story AUC {:.3f} (pooled {:.3f}, {}), ECE {:.3f}, part AUC {:.3f} "
      "(pooled "
      "{:.3f}, {}), ECE {:.3f}, "
      "called later {} of which right {:.2f}, "
      "R-hat to {:.3f}, ESS "
      "from {:.0f}, settled {:.0f} of {:.0f}, {:.1f} CPU s a show\n",
      name, s.pieces, s.log_year / s.pieces, s.inside[0] / s.pieces, s.inside[1] / s.pieces,
      s.inside[2] / s.pieces, s.error / s.pieces, calibration_error(s.maker_calls),
      s.story_area / s.shows, area(s.stories), s.stories.size(), calibration_error(s.stories),
      s.part_area / s.shows, area(s.parts), s.parts.size(), calibration_error(s.parts),
      called(s.parts).first, called(s.parts).second, s.rhat, s.ess, s.settled, s.shows,
      s.seconds / s.shows);
}

}  // namespace backmark::bench
