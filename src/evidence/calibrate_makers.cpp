// Makers: whether the first name is right as often as it is said to be.
#include <algorithm>
#include <cmath>
#include <set>

#include "base/random.h"
#include "evidence/calibrate.h"

namespace backmark::evidence {

namespace {

using model::MakerCalibration;
using model::Trust;

constexpr double z_95 = 1.959964;
constexpr double least_p = 1e-6;
constexpr int redraws = 999;
constexpr double too_rare = 0.01;

using Group = std::pair<int, int>;  // lot and maker

// The first name of one piece, and what it weighs so that each group counts once.
struct First {
  Group group;
  double said = 0;
  double weight = 0;
  bool right = false;
};

std::vector<First> firsts_of(const std::vector<MakerTrial>& trials) {
  std::map<Group, double> sizes;
  for (const MakerTrial& trial : trials) {
    sizes[{trial.lot, trial.truth}] += trial.listed ? 1 : 0;
  }
  std::vector<First> firsts;
  for (const MakerTrial& trial : trials) {
    if (trial.listed) {
      const Group group{trial.lot, trial.truth};
      const bool any = !trial.named.empty();
      firsts.push_back({group, any ? trial.named.front().p : 0, 1 / sizes[group],
                        any && trial.named.front().maker == trial.truth});
    }
  }
  return firsts;
}

std::size_t bin_of(double said) {
  return static_cast<std::size_t>(std::clamp(static_cast<int>(said * 10), 0, 9));
}

// sum over bins |said - right| / sum of weights.
double error_of(const std::vector<First>& firsts) {
  double off[10] = {};
  double all = 0;
  for (const First& first : firsts) {
    off[bin_of(first.said)] += first.weight * (first.said - (first.right ? 1 : 0));
    all += first.weight;
  }
  double sum = 0;
  for (const double bin : off) {
    sum += std::abs(bin);
  }
  return all > 0 ? sum / all : 0;
}

// How often honest odds show at least this error: every group is right or wrong as one.
double chance_of(double error, std::vector<First> firsts) {
  Random random(1);
  int as_large = 1;
  for (int draw = 0; draw < redraws; ++draw) {
    std::map<Group, double> luck;
    for (First& first : firsts) {
      const auto [at, is_new] = luck.try_emplace(first.group, 0);
      at->second = is_new ? random.uniform() : at->second;
      first.right = at->second < first.said;
    }
    as_large += error_of(firsts) >= error ? 1 : 0;
  }
  return static_cast<double>(as_large) / (redraws + 1);
}

std::vector<model::SaidShare> bins_of(const std::vector<First>& firsts) {
  struct Sums {
    double said = 0, right = 0, weight = 0;
    std::size_t pieces = 0;
  };
  std::vector<Sums> sums(10);
  for (const First& first : firsts) {
    Sums& bin = sums[bin_of(first.said)];
    bin.said += first.weight * first.said;
    bin.right += first.right ? first.weight : 0;
    bin.weight += first.weight;
    bin.pieces += 1;
  }
  std::vector<model::SaidShare> bins;
  for (const Sums& bin : sums) {
    if (bin.pieces > 0) {
      bins.push_back({bin.said / bin.weight, wilson(bin.right / bin.weight, bin.weight, z_95),
                      bin.pieces, Trust::too_few});
    }
  }
  return bins;
}

// Chance that a piece by a listed hand is given better odds of being listed than one that is
// not; ties count half.
double area_above(const std::vector<MakerTrial>& trials, std::size_t& unlisted) {
  std::vector<double> on;
  std::vector<double> off;
  for (const MakerTrial& trial : trials) {
    (trial.listed ? on : off).push_back(trial.listed_p);
  }
  unlisted = off.size();
  if (on.empty() || off.empty()) {
    return 0;
  }
  std::sort(off.begin(), off.end());
  double pairs = 0;
  for (const double p : on) {
    const auto [low, high] = std::equal_range(off.begin(), off.end(), p);
    pairs += static_cast<double>(low - off.begin()) + 0.5 * static_cast<double>(high - low);
  }
  return pairs / (static_cast<double>(on.size()) * static_cast<double>(off.size()));
}

}  // namespace

MakerCalibration score_makers(const std::vector<MakerTrial>& trials) {
  MakerCalibration makers;
  const std::vector<First> firsts = firsts_of(trials);
  std::set<Group> groups;
  for (const First& first : firsts) {
    groups.insert(first.group);
  }
  makers.pieces = firsts.size();
  makers.groups = groups.size();
  makers.listed_auc = area_above(trials, makers.unlisted);
  if (firsts.empty()) {
    return makers;
  }
  const auto n = static_cast<double>(groups.size());
  std::size_t at = 0;
  for (const MakerTrial& trial : trials) {
    if (!trial.listed) {
      continue;
    }
    const First& first = firsts[at++];
    double p = least_p;
    for (std::size_t r = 0; r < trial.named.size(); ++r) {
      if (trial.named[r].maker == trial.truth) {
        p = std::max(p, trial.named[r].p);
        makers.top_3 += r < 3 ? first.weight / n : 0;
      }
    }
    makers.top_1 += first.right ? first.weight / n : 0;
    makers.said_first += first.weight * first.said / n;
    makers.log_loss -= first.weight * std::log(p) / n;
  }
  makers.calibration_error = error_of(firsts);
  makers.chance_of_error = chance_of(makers.calibration_error, firsts);
  makers.bins = bins_of(firsts);
  makers.trust = n < least_lots                       ? Trust::too_few
                 : makers.chance_of_error >= too_rare ? Trust::trusted
                 : makers.said_first > makers.top_1   ? Trust::too_sure
                                                      : Trust::too_cautious;
  return makers;
}

}  // namespace backmark::evidence
