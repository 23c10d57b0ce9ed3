#include <chrono>
#include <sys/resource.h>

#include "base/json.h"
#include "base/text.h"
#include "desk/calendar.h"
#include "desk/each.h"
#include "desk/fitted.h"
#include "desk/reckoned.h"
#include "words/phrase.h"

namespace backmark::desk {

namespace {

double peak_mb() {
  rusage used{};
  ::getrusage(RUSAGE_SELF, &used);
  return static_cast<double>(used.ru_maxrss) / 1024;
}

// Share of the pieces that may have changed before what all share is learned anew.
constexpr double most_changed = 0.01;

store::Run to_run(const model::Show& show, model::Beliefs beliefs, std::int64_t at) {
  store::Run run{
      .beliefs = std::move(beliefs), .phrases = {}, .at = at, .position = show.position};
  const auto phrases = words::phrase_all(show, run.beliefs);
  for (const model::PieceBelief& belief : run.beliefs.pieces) {
    run.phrases.push_back(phrases.of(belief.piece));
  }
  return run;
}

Json to_json(const model::Show& show, const model::Beliefs& beliefs) {
  return {{"pieces", beliefs.pieces.size()},
          {"makers", show.all<model::Maker>().size()},
          {"chains", beliefs.chains},
          {"rhat_max", beliefs.rhat_max},
          {"ess_min", beliefs.ess_min},
          {"converged", beliefs.converged},
          {"seconds", beliefs.seconds},
          {"peak_mb", beliefs.peak_mb},
          {"seed", beliefs.seed},
          {"misfits", beliefs.misfits.size()},
          {"notes", beliefs.notes}};
}

std::string to_text(const model::Show& show, const store::Run& run) {
  std::size_t dated = 0;
  std::size_t named = 0;
  for (std::size_t i = 0; i < run.phrases.size(); ++i) {
    dated += run.phrases[i].made_row > 0 && run.phrases[i].made_row < 10 ? 1U : 0U;
    named += run.phrases[i].maker_row > 0 && run.phrases[i].maker_row < 7 ? 1U : 0U;
  }
  std::string text = fmt::format(
      "Weighed {} pieces and {} makers in {:.1f} s ({:.0f} MB).\n"
      "A year can be said of {}, a maker of {}; {} things do not fit.\n",
      run.beliefs.pieces.size(), show.all<model::Maker>().size(), run.beliefs.seconds,
      run.beliefs.peak_mb, dated, named, run.beliefs.misfits.size());
  if (run.beliefs.chains > 0) {
    text += fmt::format("{} chains: R-hat up to {:.3f}, at least {:.0f} effective draws; {}.\n",
                        run.beliefs.chains, run.beliefs.rhat_max, run.beliefs.ess_min,
                        run.beliefs.converged ? "they agree" : "they do not agree yet");
  }
  for (const std::string& note : run.beliefs.notes) {
    text += note + "\n";
  }
  return text;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const auto settings = settings_of(call, around);
  if (!settings) {
    return settings.problem();
  }
  const auto start = std::chrono::steady_clock::now();
  const evidence::Watch watch = watch_of(around, "weighing the evidence");
  const auto lessons = call.has("anew") ? std::nullopt : last_lessons(*open);
  auto reckoning = evidence::Reckoning::fit(open->show, *settings, watch,
                                            lessons ? &*lessons : nullptr, most_changed);
  if (!reckoning) {
    return reckoning.problem();
  }
  auto beliefs = reckoning->judge_all(watch);
  if (!beliefs) {
    return beliefs.problem();
  }
  beliefs->version = BACKMARK_VERSION;
  beliefs->digest = store::digest(open->show);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  beliefs->seconds = took.count();
  beliefs->peak_mb = peak_mb();
  if (auto done = keep_lessons(*open, reckoning->lessons()); !done) {
    return done.problem();
  }
  const store::Run kept = to_run(open->show, std::move(*beliefs), around.now);
  if (auto done = open->store.record_run(kept); !done) {
    return done.problem();
  }
  around.progress(1, "");
  return Answer{.json = to_json(open->show, kept.beliefs),
                .text = to_text(open->show, kept),
                .problems = {}};
}

}  // namespace

Operation infer_show() {
  return {
      .name = "infer",
      .help = "weigh all evidence: years and makers of every piece",
      .writes = true,
      .parameters = {show_folder(),
                     seed_parameter(),
                     unlisted_parameter(),
                     chains_parameter(),
                     rounds_parameter(),
                     {.name = "anew",
                      .takes = Takes::flag,
                      .help = "learn everything again, also what a small change leaves much "
                              "as it is"}},
      .run = run};
}

}  // namespace backmark::desk
