// The show as fitted, kept between calls where the door keeps shows.
#pragma once

#include <memory>

#include "desk/reckoned.h"

namespace backmark::desk {

// A fit together with the show that it looks into.
struct Fitted {
  std::shared_ptr<const model::Show> show;
  evidence::Reckoning reckoning;
};

// Settings that a page may ask for again; any others are somebody's trial.
bool usual(const evidence::ReckonSettings& settings);

// Kept if the settings are the usual ones, with or without the sampled part. Problems: those of
// Reckoning::fit.
Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open,
                                                  const evidence::ReckonSettings& settings,
                                                  const Surroundings& around);

// With the usual settings but without the sampled part, which takes seconds where a page has a
// tenth of one: answers may differ from those of `infer` by a year or so.
Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open, const Surroundings& around);

}  // namespace backmark::desk
