// The demo show against what its generator knows: pieces whose year is not known to a year or
// two, makers of pieces that name none, wrong stories, later parts.
// Usage: bench_demo_truth [SEED]
#include <cstdlib>
#include <ctime>
#include <map>
#include <set>

#include "evidence/reckon.h"
#include "scenario/demo_records.h"
#include "truth_score.h"

namespace {

using namespace backmark;
using namespace backmark::bench;

bool replaced(const scenario::PieceTruth& truth, std::string_view part) {
  for (const scenario::ReplacedPart& one : truth.replaced) {
    if (one.kind == part) {
      return true;
    }
  }
  return false;
}

void score_doubts(const model::Show& show,
                  const scenario::PieceTruth& truth,
                  const std::set<std::pair<std::string, std::string>>& wrong,
                  const std::vector<model::Misfit>& doubts,
                  Score& score) {
  for (const model::Misfit& doubt : doubts) {
    if (doubt.part) {
      score.parts.emplace_back(doubt.p, replaced(truth, show.text(doubt.part)));
    }
    for (const model::Claim& claim : show.all<model::Claim>()) {
      if (doubt.record == claim.id.value) {
        const model::Source* source = show.find(claim.source);
        score.stories.emplace_back(doubt.p, wrong.contains({truth.number, source->key}));
      }
    }
  }
}

void run(const scenario::Scenario& demo,
         const evidence::ReckonSettings& settings,
         Score& score) {
  const model::Show show = scenario::records_of(demo);
  const std::clock_t start = std::clock();
  const auto reckoning = evidence::Reckoning::fit(show, settings, {});
  const auto beliefs = reckoning->judge_all({});
  score.seconds += static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  std::map<std::string, std::size_t> at;
  const auto& pieces = show.all<model::Piece>();
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    at[pieces[i].number] = i;
  }
  std::set<std::pair<std::string, std::string>> wrong;
  for (const scenario::WrongStory& story : demo.truth.stories) {
    wrong.insert({story.number, story.source});
  }
  Random random(99);
  for (const scenario::PieceTruth& truth : demo.truth.pieces) {
    const std::size_t i = at.at(truth.number);
    score_doubts(show, truth, wrong, reckoning->doubts(i), score);
    const evidence::StylePiece& known = reckoning->gathered().style.pieces[i];
    if (!known.stated || known.stated->length() > 2) {
      score_year(beliefs->pieces[i].year, truth.year.value, random, score);
    }
    if (!known.maker) {
      const model::Maker* maker = show.maker(truth.maker);
      for (const model::MakerChance& chance : beliefs->pieces[i].maker.makers) {
        score.maker_calls.emplace_back(chance.p, maker != nullptr && maker->id == chance.maker);
      }
      score.maker_calls.emplace_back(beliefs->pieces[i].maker.unrecorded, maker == nullptr);
    }
  }
  close_show(score);
  score.rhat = beliefs->rhat_max;
  score.ess = beliefs->ess_min;
  score.settled += beliefs->converged ? 1 : 0;
}

}  // namespace

int main(int argc, char** argv) {
  scenario::Options options;
  options.seed = argc > 1 ? std::strtoull(argv[1], nullptr, 10) : options.seed;
  const auto demo = scenario::make(options);
  if (!demo) {
    return 1;
  }
  Score plain;
  Score sampled;
  evidence::ReckonSettings settings;
  run(*demo, settings, sampled);
  settings.chains = 0;
  run(*demo, settings, plain);
  print("without chains", plain);
  print("with chains   ", sampled);
  return 0;
}
