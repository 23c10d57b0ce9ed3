// The reckoning as operations use it: its settings from the call, its last result from the
// store.
#pragma once

#include "desk/open.h"
#include "evidence/reckon.h"

namespace backmark::desk {

// Settings from --seed, --unlisted, --chains and --rounds; `today` is the year of the call.
Result<evidence::ReckonSettings> settings_of(const Call& call, const Surroundings& around);
// The same where a call has no such options.
evidence::ReckonSettings usual_settings(const Surroundings& around);
Parameter seed_parameter();
Parameter unlisted_parameter();
Parameter chains_parameter();
Parameter rounds_parameter();

// Progress and stop of the call, for long work.
evidence::Watch watch_of(const Surroundings& around, std::string what);

// The last recorded reckoning, and whether the show changed since in what bears on it.
struct LastRun {
  std::shared_ptr<const store::Run> kept;
  const store::Run& run;
  bool stale = false;
};
// From the call's Warm, if it has one. Problem: not_found when the show was never reckoned.
Result<LastRun> last_run(OpenShow& open);

// One line to print above results that are out of date; empty if they are not.
std::string stale_line(const LastRun& last);

}  // namespace backmark::desk
