// Scores of predicted years against stated spans, and the splits they are taken on.
#pragma once

#include <cmath>
#include <map>
#include <set>
#include <vector>

#include "base/random.h"
#include "evidence/carnegie.h"
#include "evidence/style.h"

namespace backmark::evidence {

inline constexpr YearSpan carnegie_axis{{1600}, {2015}};
inline const std::vector<Year> asked_years{{1913}, {1947}, {1976}};

struct Split {
  std::vector<std::size_t> training, hidden;  // pieces
};

// One random piece a group, or all of them.
inline std::vector<std::size_t> chosen_pieces(const Carnegie& data, bool one, Random& random) {
  std::vector<std::size_t> order(data.table.pieces.size());
  for (std::size_t i = 0; i < order.size(); ++i) {
    order[i] = i;
  }
  if (!one) {
    return order;
  }
  random.shuffle(order);
  std::set<int> seen;
  std::vector<std::size_t> chosen;
  for (const std::size_t i : order) {
    if (seen.insert(data.group[i]).second) {
      chosen.push_back(i);
    }
  }
  std::sort(chosen.begin(), chosen.end());
  return chosen;
}

// Hides about 30 % of the lots whole; with `most_lots`, keeps only so many for training.
inline Split split_lots(const Carnegie& data,
                        const std::vector<std::size_t>& chosen,
                        std::size_t most_lots,
                        Random& random) {
  std::set<int> present;
  for (const std::size_t i : chosen) {
    present.insert(data.table.pieces[i].lot);
  }
  std::vector<int> lots(present.begin(), present.end());
  random.shuffle(lots);
  const std::size_t hidden = lots.size() * 3 / 10;
  std::map<int, std::size_t> rank;
  for (std::size_t l = 0; l < lots.size(); ++l) {
    rank[lots[l]] = l;
  }
  Split split;
  for (const std::size_t i : chosen) {
    const std::size_t at = rank[data.table.pieces[i].lot];
    if (at < hidden) {
      split.hidden.push_back(i);
    } else if (at < hidden + most_lots) {
      split.training.push_back(i);
    }
  }
  return split;
}

// The training pieces alone, as a table.
inline StyleTable training_table(const Carnegie& data, const Split& split) {
  StyleTable table;
  table.characters = data.table.characters;
  for (const std::size_t i : split.training) {
    table.pieces.push_back(data.table.pieces[i]);
  }
  return table;
}

struct Prediction {
  std::vector<double> p;       // one a year of the axis
  std::vector<double> before;  // of each asked year
};

// A factor 0.02 after the year in which the museum got the piece.
inline void limit(std::vector<double>& p, std::optional<Year> latest) {
  double sum = 0;
  for (std::size_t t = 0; t < p.size(); ++t) {
    p[t] *= latest && 1600 + static_cast<int>(t) > latest->value ? 0.02 : 1;
    sum += p[t];
  }
  for (double& value : p) {
    value /= sum;
  }
}

struct Answer {
  double given = 0;
  bool right = false;
};

// Expected calibration error over ten bins of stated probability.
inline double calibration_error(const std::vector<Answer>& answers) {
  double off[10] = {};
  for (const Answer& answer : answers) {
    const auto bin = std::min(9, static_cast<int>(answer.given * 10));
    off[bin] += answer.given - (answer.right ? 1 : 0);
  }
  double sum = 0;
  for (const double bin : off) {
    sum += std::abs(bin);
  }
  return answers.empty() ? 0 : sum / static_cast<double>(answers.size());
}

struct DatingScore {
  double log_mass = 0, by_lot = 0, median_error = 0;
  double cover[3] = {};  // 50, 80, 95 %
  std::vector<std::vector<Answer>> before = std::vector<std::vector<Answer>>(3);
};

inline double covered(YearSpan stated, const std::vector<double>& p, double share) {
  const Year low = quantile(carnegie_axis, p, (1 - share) / 2);
  const Year high = quantile(carnegie_axis, p, (1 + share) / 2);
  const int inside = std::min(stated.last, high) - std::max(stated.first, low) + 1;
  return std::max(0.0, static_cast<double>(inside)) / stated.length();
}

inline DatingScore score(const Carnegie& data,
                         const std::vector<std::size_t>& hidden,
                         const std::vector<Prediction>& predictions) {
  DatingScore score;
  std::map<int, std::pair<double, int>> lots;
  std::vector<int> errors;
  const auto n = static_cast<double>(hidden.size());
  for (std::size_t h = 0; h < hidden.size(); ++h) {
    const auto& piece = data.table.pieces[hidden[h]];
    const YearSpan stated = *piece.stated;
    const auto& p = predictions[h].p;
    double mass = 0;
    for (Year t = stated.first; t <= stated.last; t = t + 1) {
      mass += p[static_cast<std::size_t>(t.value - 1600)];
    }
    const double log_mass = std::log(std::max(mass, 1e-6));
    score.log_mass += log_mass / n;
    lots[piece.lot].first += log_mass;
    lots[piece.lot].second += 1;
    const double shares[3] = {0.5, 0.8, 0.95};
    for (int s = 0; s < 3; ++s) {
      score.cover[s] += covered(stated, p, shares[s]) / n;
    }
    const Year middle = quantile(carnegie_axis, p, 0.5);
    errors.push_back(std::max({0, stated.first - middle, middle - stated.last}));
    for (std::size_t y = 0; y < predictions[h].before.size(); ++y) {
      if (stated.last < asked_years[y] || stated.first >= asked_years[y]) {
        score.before[y].push_back({predictions[h].before[y], stated.last < asked_years[y]});
      }
    }
  }
  for (const auto& [lot, sum] : lots) {
    score.by_lot += sum.first / sum.second / static_cast<double>(lots.size());
  }
  std::sort(errors.begin(), errors.end());
  score.median_error = errors[errors.size() / 2];
  return score;
}

inline std::vector<Prediction> predict(const Carnegie& data,
                                       const Style& style,
                                       const std::vector<std::size_t>& hidden) {
  std::vector<OddsMap> maps;
  for (const Year year : asked_years) {
    maps.push_back(style.before(year));
  }
  std::vector<Prediction> predictions;
  for (const std::size_t i : hidden) {
    Prediction one;
    const auto& piece = data.table.pieces[i];
    one.p = style.judge({&piece.values, piece.lot, piece.latest}).p;
    for (std::size_t y = 0; y < maps.size(); ++y) {
      double before = 0;
      for (int t = 1600; t < asked_years[y].value; ++t) {
        before += one.p[static_cast<std::size_t>(t - 1600)];
      }
      one.before.push_back(maps[y](before));
    }
    predictions.push_back(std::move(one));
  }
  return predictions;
}

}  // namespace backmark::evidence
