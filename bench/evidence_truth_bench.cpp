// Simulated shows with the truth known: is the reckoning right, and right about how right it
// is? Usage: bench_evidence_truth [SHOWS PIECES [WAVES]]
// WAVES: how long fashions last, as a share of what is usual (1). A fourth argument `plain`
// leaves out the chains.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <map>

#include "base/text.h"
#include "evidence/grown_oracle.h"
#include "evidence/grown_show.h"
#include "evidence/reckon.h"
#include "joint_of_grown.h"
#include "truth_score.h"

namespace {

using namespace backmark;
using namespace backmark::bench;

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
  static const char* const names[5] = {"front", "first", "second", "third", "rest"};
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
  close_show(score);
  score.rhat = std::max(score.rhat, beliefs->rhat_max);
  score.ess = std::min(score.ess, beliefs->ess_min);
  score.settled += beliefs->converged ? 1 : 0;
}

// Whether anything of the part was recorded: of the others nobody can tell.
bool is_seen(const evidence::Grown& grown, std::size_t piece, std::size_t part) {
  bool seen = false;
  for (std::size_t c = part; c < grown.seen[piece].size(); c += evidence::Grower::parts) {
    seen = seen || grown.seen[piece][c] >= 0;
  }
  return seen;
}

// The joint sampler by itself, styles and all.
void run_joint(const evidence::Grown& grown, const evidence::GrowthPlan& plan, Score& score) {
  const std::clock_t start = std::clock();
  const evidence::JointShow show = joint_show_of(grown, plan);
  const auto fit = evidence::fit_joint(show, joint_settings_of_grown(),
                                       {.chains = 4, .warm_up = 120, .keep = 300}, {});
  score.seconds += static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  Random random(99);
  for (std::size_t i = 0; i < grown.year.size(); ++i) {
    const evidence::JointPieceBelief& belief = fit->pieces[i];
    for (std::size_t part = 1; part <= 3; ++part) {
      if (is_seen(grown, i, part)) {
        score.parts.emplace_back(belief.replaced_p[part], grown.replaced[i][part] != 0);
      }
    }
    if (grown.dated[i] == 0) {
      score_year({show.years, belief.year}, grown.year[i], random, score);
    }
  }
  close_show(score);
  score.rhat = std::max(score.rhat, fit->years.rhat_max);
  score.ess = std::min(score.ess, fit->years.ess_min);
  score.settled += fit->converged ? 1 : 0;
}

// What one who knows how the show was made would answer: the best there is.
void run_oracle(const evidence::Grown& grown, const evidence::GrowthPlan& plan, Score& score) {
  const evidence::GrownOracle oracle(grown, plan);
  Random random(99);
  for (std::size_t i = 0; i < grown.year.size(); ++i) {
    const evidence::OracleAnswer answer = oracle.judge(i);
    for (std::size_t part = 1; part <= 3; ++part) {
      if (is_seen(grown, i, part)) {
        score.parts.emplace_back(answer.replaced[part], grown.replaced[i][part] != 0);
      }
    }
    if (grown.story[i] != 0) {
      score.stories.emplace_back(answer.story_wrong, grown.story_right[i] == 0);
    }
    if (grown.dated[i] == 0) {
      score_year({{Year{plan.first_year}, Year{plan.first_year + plan.years - 1}}, answer.year},
                 grown.year[i], random, score);
    }
  }
  close_show(score);
}

}  // namespace

int main(int argc, char** argv) {
  const int shows = argc > 1 ? std::atoi(argv[1]) : 4;
  const int pieces = argc > 2 ? std::atoi(argv[2]) : 1000;
  const double waves = argc > 3 ? std::atof(argv[3]) : 1;
  const bool chains = argc <= 4;
  Score plain;
  Score sampled;
  Score joint;
  Score known;
  for (int k = 0; k < shows; ++k) {
    const evidence::GrowthPlan plan{
        .pieces = pieces, .waves = waves, .seed = 1000 + static_cast<std::uint64_t>(k)};
    const evidence::Grown grown = evidence::Grower(plan).grow();
    run_oracle(grown, plan, known);
    evidence::ReckonSettings settings;
    settings.chains = 0;
    run(grown, settings, plain);
    if (chains) {
      settings.chains = evidence::ReckonSettings{}.chains;
      run(grown, settings, sampled);
      run_joint(grown, plan, joint);
    }
  }
  print("without chains", plain);
  if (chains) {
    print("with chains   ", sampled);
    print("joint alone   ", joint);
  }
  print("all known     ", known);
  return 0;
}
