// Simulation-based calibration (Talts and others, arXiv 1804.06788): draw everything from the
// prior, infer, and rank the truth among the draws. If the sampler is right, ranks are uniform.
#pragma once

#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "evidence/joint_chain.h"
#include "evidence/joint_fashion.h"
#include "evidence/simulate.h"

namespace backmark::evidence {

// The quantities followed, by name.
inline std::vector<std::pair<std::string, double>> followed(const JointShow& show,
                                                            const JointState& state) {
  std::vector<std::pair<std::string, double>> q;
  for (std::size_t i = 0; i < 4; ++i) {
    q.emplace_back("year " + std::to_string(i), state.piece[i].year);
  }
  for (std::size_t i = 0; i < 3; ++i) {
    q.emplace_back("maker " + std::to_string(i), state.piece[i].maker);
  }
  for (std::size_t m = 1; m < state.start.size(); ++m) {
    q.emplace_back("start " + std::to_string(m), state.start[m]);
    q.emplace_back("end " + std::to_string(m), state.end[m]);
  }
  const std::size_t years = state.density.size();
  for (std::size_t c = 0; c < show.characters.size(); ++c) {
    const std::string name = std::to_string(c);
    q.emplace_back("habit share " + name, state.habit_share[c]);
    q.emplace_back("concentration " + name, static_cast<double>(state.concentration[c]));
    q.emplace_back("fashion step " + name, static_cast<double>(state.fashion_step[c]));
    q.emplace_back("fashion early " + name, state.stick[c][years / 4]);
    q.emplace_back("fashion late " + name, state.stick[c][years - 5]);
  }
  for (std::size_t g = 0; g < state.replaced_share.size(); ++g) {
    q.emplace_back("replaced share " + std::to_string(g), state.replaced_share[g]);
  }
  q.emplace_back("unlisted share", state.maker_share[0]);
  q.emplace_back("share of maker 1", state.maker_share[1]);
  q.emplace_back("naming of maker 1", state.naming[1]);
  double own = 0;
  double unlisted = 0;
  for (std::size_t i = 0; i < state.piece.size(); ++i) {
    for (std::size_t c = 0; c < show.characters.size(); ++c) {
      if (show.pieces[i].values[c] >= 0) {
        own += state.piece[i].own[c];
      }
    }
    unlisted += state.piece[i].maker == 0 ? 1 : 0;
  }
  q.emplace_back("own choices", own);
  q.emplace_back("unlisted pieces", unlisted);
  q.emplace_back("density of first decade", state.density[0]);
  for (const double share : state.doubt_share) {
    q.emplace_back("share of empty talk", share);
  }
  for (const LineageState& lineage : state.lineage) {
    q.emplace_back("first change of mark", lineage.change.front());
    q.emplace_back("last change of mark", lineage.change.back());
    q.emplace_back("overlap of marks", lineage.overlap);
  }
  return q;
}

struct RankPlan {
  int repeats = 100;
  int warm_up = 200;
  int thin = 12;
  int draws = 99;
  int bins = 10;
};

struct RankResult {
  std::string name;
  double p = 1;       // of chi-square against uniform ranks
  double lean_z = 0;  // mean rank against its expectation, in standard errors
};

// Upper tail of chi-square with `freedom` degrees (Wilson and Hilferty 1931, good to 0.001
// here).
inline double chi_square_tail(double x, double freedom) {
  const double k = 2 / (9 * freedom);
  const double z = (std::cbrt(x / freedom) - (1 - k)) / std::sqrt(k);
  return 0.5 * std::erfc(z / std::sqrt(2.0));
}

inline std::vector<RankResult> rank_test(const RankPlan& plan,
                                         const SimulationPlan& simulation,
                                         const JointSettings& truth_settings,
                                         const JointSettings& sampler_settings,
                                         std::uint64_t seed) {
  std::vector<std::string> names;
  std::vector<std::vector<int>> bins;
  std::vector<double> mean_rank;
  for (int repeat = 0; repeat < plan.repeats; ++repeat) {
    Random random = Random::stream(seed, static_cast<std::uint64_t>(repeat));
    const Simulated simulated = simulate_show(simulation, truth_settings, random);
    const auto truth = followed(simulated.show, simulated.truth);
    JointChain chain(simulated.show, sampler_settings, nullptr,
                     Random::stream(seed + 1, static_cast<std::uint64_t>(repeat)));
    for (int i = 0; i < plan.warm_up; ++i) {
      chain.sweep();
    }
    std::vector<double> below(truth.size(), 0);
    std::vector<double> equal(truth.size(), 0);
    for (int d = 0; d < plan.draws; ++d) {
      for (int i = 0; i < plan.thin; ++i) {
        chain.sweep();
      }
      const auto drawn = followed(simulated.show, chain.state());
      for (std::size_t q = 0; q < truth.size(); ++q) {
        below[q] += drawn[q].second < truth[q].second ? 1 : 0;
        equal[q] += drawn[q].second == truth[q].second ? 1 : 0;
      }
    }
    if (names.empty()) {
      for (const auto& [name, value] : truth) {
        names.push_back(name);
      }
      bins.assign(names.size(), std::vector<int>(static_cast<std::size_t>(plan.bins), 0));
      mean_rank.assign(names.size(), 0);
    }
    for (std::size_t q = 0; q < truth.size(); ++q) {
      // Ties are broken at random, so discrete quantities have uniform ranks too.
      const auto rank =
          below[q] + static_cast<double>(random.below(static_cast<std::size_t>(equal[q]) + 1));
      const double share = rank / (plan.draws + 1);
      ++bins[q][static_cast<std::size_t>(share * plan.bins)];
      mean_rank[q] += (share + 0.5 / (plan.draws + 1)) / plan.repeats;
    }
  }
  std::vector<RankResult> results;
  for (std::size_t q = 0; q < names.size(); ++q) {
    const double expected = static_cast<double>(plan.repeats) / plan.bins;
    double chi = 0;
    for (const int n : bins[q]) {
      chi += (n - expected) * (n - expected) / expected;
    }
    results.push_back({names[q], chi_square_tail(chi, plan.bins - 1),
                       (mean_rank[q] - 0.5) * std::sqrt(12.0 * plan.repeats)});
  }
  return results;
}

// A small show in which every step of the sampler has something to do.
inline SimulationPlan small_plan() {
  SimulationPlan plan;
  plan.years = {{1900}, {1959}};
  plan.pieces = 40;
  plan.characters = {{3, 0}, {3, 0}, {2, 1}, {4, 1}, {3, 2}};
  plan.components = 3;
  plan.makers = 4;
  plan.missing = 0.2;
  plan.dated = 0.3;
  plan.stated = 0.4;
  plan.stated_sd = 5;
  plan.stated_doubt = {{2, 6}};
  plan.lineages = {3};
  plan.marked = 0.5;
  return plan;
}

inline JointSettings small_settings() {
  JointSettings settings;
  settings.replaced = {{1, 9}, {1, 5}, {2, 8}};
  settings.mark_overlap = {0, 2, 4};
  settings.mark_stray = 0.1;
  return settings;
}

}  // namespace backmark::evidence
