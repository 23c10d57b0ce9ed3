// Simulated shows with the truth known: is the reckoning right, and right about how right it
// is? Usage: bench_evidence_truth [SHOWS PIECES]
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <map>

#include "base/text.h"
#include "evidence/grown_show.h"
#include "evidence/reckon.h"

namespace {

using namespace backmark;

struct Score {
  double log_year = 0, error = 0, pieces = 0;
  double inside[3] = {0, 0, 0};
  std::vector<std::pair<double, bool>> maker_calls;  // chance given to the first maker, right
  std::vector<std::pair<double, bool>> stories;      // chance of empty talk, it is
  std::vector<std::pair<double, bool>> parts;        // chance of a later part, it is
  double rhat = 0, ess = 1e9, settled = 0, shows = 0, seconds = 0;
};

// The chance that a wrong one is given more doubt than a right one.
double area(std::vector<std::pair<double, bool>> calls) {
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

// Expected calibration error over tenths of the chance given.
double calibration_error(const std::vector<std::pair<double, bool>>& calls) {
  double given[10] = {};
  double seen[10] = {};
  for (const auto& [p, right] : calls) {
    const auto bin = std::min<std::size_t>(9, static_cast<std::size_t>(p * 10));
    given[bin] += p;
    seen[bin] += right ? 1 : 0;
  }
  double error = 0;
  for (std::size_t bin = 0; bin < 10; ++bin) {
    error += std::abs(given[bin] - seen[bin]) / static_cast<double>(calls.size());
  }
  return error;
}

void score_year(const model::YearBelief& belief, int year, Random& random, Score& score) {
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

void score_maker(const evidence::Grown& grown,
                 const model::PieceBelief& belief,
                 std::size_t i,
                 Score& score) {
  const auto& makers = grown.show.all<model::Maker>();
  for (const model::MakerChance& chance : belief.maker.makers) {
    const bool right = grown.maker[i] >= 0 &&
                       makers[static_cast<std::size_t>(grown.maker[i])].id == chance.maker;
    score.maker_calls.emplace_back(chance.p, right);
  }
  score.maker_calls.emplace_back(belief.maker.unrecorded, grown.maker[i] < 0);
}

void score_doubts(const evidence::Grown& grown,
                  const evidence::Reckoning& reckoning,
                  std::size_t i,
                  Score& score) {
  static const char* const names[5] = {"front", "fitting", "cord", "tip", "rest"};
  for (const model::Misfit& doubt : reckoning.doubts(i)) {
    if (doubt.record != 0 && doubt.record == grown.story[i]) {
      score.stories.emplace_back(doubt.p, grown.story_right[i] == 0);
    }
    for (std::size_t part = 0; part < 5 && doubt.part; ++part) {
      if (grown.show.text(doubt.part) == names[part]) {
        score.parts.emplace_back(doubt.p, grown.replaced[i][part] != 0);
      }
    }
  }
}

void run(const evidence::Grown& grown, const evidence::ReckonSettings& settings, Score& score) {
  const std::clock_t start = std::clock();
  const auto reckoning = evidence::Reckoning::fit(grown.show, settings, {});
  const auto beliefs = reckoning->judge_all({});
  score.seconds += static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  Random random(99);
  for (std::size_t i = 0; i < beliefs->pieces.size(); ++i) {
    score_doubts(grown, *reckoning, i, score);
    if (reckoning->gathered().style.pieces[i].stated) {
      continue;
    }
    score_year(beliefs->pieces[i].year, grown.year[i], random, score);
    if (!reckoning->gathered().style.pieces[i].maker) {
      score_maker(grown, beliefs->pieces[i], i, score);
    }
  }
  score.shows += 1;
  score.rhat = std::max(score.rhat, beliefs->rhat_max);
  score.ess = std::min(score.ess, beliefs->ess_min);
  score.settled += beliefs->converged ? 1 : 0;
}

void print(const char* name, const Score& s) {
  fmt::print(
      "{}: undated {:.0f}, log {:.3f}, cover {:.3f} {:.3f} {:.3f}, mean error {:.2f} years, "
      "maker ECE {:.3f}, story AUC {:.3f} ({}), part AUC {:.3f} ({}), R-hat to {:.3f}, ESS "
      "from {:.0f}, settled {:.0f} of {:.0f}, {:.1f} CPU s a show\n",
      name, s.pieces, s.log_year / s.pieces, s.inside[0] / s.pieces, s.inside[1] / s.pieces,
      s.inside[2] / s.pieces, s.error / s.pieces, calibration_error(s.maker_calls),
      area(s.stories), s.stories.size(), area(s.parts), s.parts.size(), s.rhat, s.ess,
      s.settled, s.shows, s.seconds / s.shows);
}

}  // namespace

int main(int argc, char** argv) {
  const int shows = argc > 1 ? std::atoi(argv[1]) : 4;
  const int pieces = argc > 2 ? std::atoi(argv[2]) : 1000;
  Score plain;
  Score sampled;
  for (int k = 0; k < shows; ++k) {
    const evidence::Grown grown =
        evidence::Grower({.pieces = pieces, .seed = 1000 + static_cast<std::uint64_t>(k)})
            .grow();
    evidence::ReckonSettings settings;
    run(grown, settings, sampled);
    settings.chains = 0;
    run(grown, settings, plain);
  }
  print("without chains", plain);
  print("with chains   ", sampled);
  return 0;
}
