#include "desk/reckoned.h"

#include <chrono>

#include "desk/calendar.h"
#include "desk/warm.h"

namespace backmark::desk {

namespace {

Year year_of(std::int64_t seconds) {
  const std::chrono::sys_days day{std::chrono::days(day_of(seconds))};
  return {static_cast<int>(std::chrono::year_month_day(day).year())};
}

}  // namespace

Parameter seed_parameter() {
  return {.name = "seed",
          .takes = Takes::whole,
          .help = "seed of the reckoning, recorded with it (1)"};
}

Parameter unlisted_parameter() {
  return {.name = "unlisted",
          .takes = Takes::number,
          .help = "share of pieces by hands that are not on the list, 0 to 1 (learned)"};
}

Parameter chains_parameter() {
  return {
      .name = "chains",
      .takes = Takes::whole,
      .help =
          "chains of the sampled part: reliabilities, changes of marks; 0 leaves it out (4)"};
}

Parameter rounds_parameter() {
  return {.name = "rounds",
          .takes = Takes::whole,
          .help = "rounds that each chain keeps, at least 100 (300)"};
}

evidence::ReckonSettings usual_settings(const Surroundings& around) {
  evidence::ReckonSettings settings;
  settings.today = year_of(around.now);
  return settings;
}

Result<evidence::ReckonSettings> settings_of(const Call& call, const Surroundings& around) {
  evidence::ReckonSettings settings = usual_settings(around);
  const auto seed = call.whole("seed", 1);
  if (!seed) {
    return seed.problem();
  }
  settings.seed = static_cast<std::uint64_t>(*seed);
  const auto unlisted = call.number("unlisted", -1);
  if (!unlisted) {
    return unlisted.problem();
  }
  if (call.has("unlisted") && (*unlisted < 0 || *unlisted >= 1)) {
    return Problem{Fault::bad_input, "a share lies between 0 and 1", "--unlisted",
                   "write 0.3 for three in ten"};
  }
  settings.unlisted_share = *unlisted;
  const auto chains = call.whole("chains", settings.chains);
  const auto rounds = call.whole("rounds", settings.rounds);
  if (!chains || !rounds) {
    return chains ? rounds.problem() : chains.problem();
  }
  if (*chains < 0 || *chains > 64 || *rounds < 100 || *rounds > 100000) {
    return Problem{Fault::bad_input, "there are 0 to 64 chains of 100 to 100000 rounds",
                   "--chains, --rounds", "write 4 and 300"};
  }
  settings.chains = static_cast<int>(*chains);
  settings.rounds = static_cast<int>(*rounds);
  return settings;
}

evidence::Watch watch_of(const Surroundings& around, std::string what) {
  evidence::Watch watch;
  watch.stop = around.stop;
  watch.progress = [progress = around.progress, what = std::move(what)](double share) {
    progress(share, what);
  };
  return watch;
}

Result<LastRun> last_run(OpenShow& open) {
  const auto kept = open.warm != nullptr ? open.warm->last_run(open.store, open.kept)
                                         : read_last_run(open.store, open.show);
  if (!kept) {
    return kept.problem();
  }
  if (kept->run == nullptr) {
    return Problem{Fault::not_found, "this show was never reckoned",
                   open.store.folder().string(), "run \"backmark infer\" first"};
  }
  return LastRun{kept->run, *kept->run, kept->stale};
}

std::string stale_line(const LastRun& last) {
  return last.stale ? "The show has changed since it was reckoned on " +
                          to_minute(last.run.at) + "; run \"backmark infer\" again.\n"
                    : "";
}

}  // namespace backmark::desk
