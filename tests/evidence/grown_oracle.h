// The answer of one who knows how a grown show was made: the exact chances of year, maker and
// later parts given what is recorded, by plain summing over years and makers. Nothing that has
// to learn from the pieces can do better on average, so it says how much of a shortfall is the
// show's.
#pragma once

#include <array>
#include <cmath>
#include <vector>

#include "evidence/grown_show.h"

namespace backmark::evidence {

struct OracleAnswer {
  std::vector<double> year;                      // one a year, sums to 1
  std::array<double, Grower::parts> replaced{};  // chance that the part is later
  double story_wrong = 0;                        // of the story told, if any
};

class GrownOracle {
 public:
  GrownOracle(const Grown& grown, const GrowthPlan& plan) : grown_(grown), plan_(plan) {}

  OracleAnswer judge(std::size_t piece) const {
    const auto years = static_cast<std::size_t>(plan_.years);
    OracleAnswer answer;
    answer.year.assign(years, 0);
    const auto later = later_parts(piece);
    double total = 0;
    for (int maker = -1; maker < plan_.makers; ++maker) {
      for (std::size_t t = 0; t < years; ++t) {
        const double before = prior(piece, maker, static_cast<int>(t));
        if (before > 0) {
          total += add(piece, maker, t, before, later, answer);
        }
      }
    }
    for (double& p : answer.year) {
      p /= total;
    }
    for (double& p : answer.replaced) {
      p /= total;
    }
    answer.story_wrong /= total;
    return answer;
  }

 private:
  static bool replaceable(std::size_t part) { return part >= 1 && part <= 3; }
  static constexpr int least_gap = 20;

  // Chance of a part's values if it was made in any one later year, alike.
  std::vector<std::vector<double>> later_parts(std::size_t piece) const {
    const auto years = static_cast<std::size_t>(plan_.years);
    std::vector<std::vector<double>> later(Grower::parts, std::vector<double>(years, 0));
    for (std::size_t part = 0; part < Grower::parts; ++part) {
      double sum = 0;
      double count = 0;
      for (std::size_t t = years; t-- > least_gap;) {
        sum += part_chance(piece, part, -1, t);
        count += 1;
        later[part][t - least_gap] = sum / count;
      }
    }
    return later;
  }

  double part_chance(std::size_t piece, std::size_t part, int maker, std::size_t t) const {
    double p = 1;
    for (std::size_t c = part; c < grown_.seen[piece].size(); c += Grower::parts) {
      const int value = grown_.seen[piece][c];
      if (value < 0) {
        continue;
      }
      const double usual = grown_.fashions[c][static_cast<std::size_t>(value)][t];
      p *= maker < 0 ? usual
                     : (1 - plan_.own_habit) * usual +
                           plan_.own_habit *
                               (grown_.habits[static_cast<std::size_t>(maker)][c] == value);
    }
    return p;
  }

  double prior(std::size_t piece, int maker, int t) const {
    const int year = plan_.first_year + t;
    if (grown_.dated[piece] != 0 && year != grown_.year[piece]) {
      return 0;
    }
    double p = plan_.unlisted / plan_.years;
    if (maker >= 0) {
      const auto [first, last] = grown_.worked[static_cast<std::size_t>(maker)];
      if (year < first || year > last) {
        return 0;
      }
      const bool named = grown_.has_name[piece] != 0;
      p = (1 - plan_.unlisted) / plan_.makers / (last - first + 1) *
          (named ? (maker == grown_.maker[piece] ? plan_.signed_share : 0)
                 : 1 - plan_.signed_share);
    } else if (grown_.has_name[piece] != 0) {
      return 0;
    }
    const int got = grown_.acquired[piece];
    return got == 0 ? p : got < year ? 0 : p * std::exp(-(got - year) / 30.0);
  }

  double add(std::size_t piece,
             int maker,
             std::size_t t,
             double before,
             const std::vector<std::vector<double>>& later,
             OracleAnswer& answer) const {
    std::array<double, Grower::parts> share{};
    double p = before;
    const bool may = static_cast<int>(t) + least_gap < plan_.years;
    for (std::size_t part = 0; part < Grower::parts; ++part) {
      const double rho = may && replaceable(part) ? plan_.replaced : 0;
      const double original = (1 - rho) * part_chance(piece, part, maker, t);
      const double changed = rho > 0 ? rho * later[part][t] : 0;
      share[part] = changed / (original + changed);
      p *= original + changed;
    }
    double wrong = 0;
    if (grown_.told[piece] != 0) {
      const int off = std::abs(grown_.told[piece] - plan_.first_year - static_cast<int>(t));
      const double right = off <= 5 ? (1 - plan_.told_wrong) / 11 : 0;
      wrong = plan_.told_wrong / plan_.years / (right + plan_.told_wrong / plan_.years);
      p *= right + plan_.told_wrong / plan_.years;
    }
    answer.year[t] += p;
    for (std::size_t part = 0; part < Grower::parts; ++part) {
      answer.replaced[part] += p * share[part];
    }
    answer.story_wrong += p * wrong;
    return p;
  }

  const Grown& grown_;
  GrowthPlan plan_;
};

}  // namespace backmark::evidence
