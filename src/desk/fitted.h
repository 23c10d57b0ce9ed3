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

// Of the show as it stands; kept if the settings are the usual ones, with or without the
// sampled part. Problems: those of Reckoning::fit.
Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open,
                                                  const evidence::ReckonSettings& settings,
                                                  const Surroundings& around);

// With the usual settings but without the sampled part, which takes seconds where a page has a
// tenth of one: answers may differ from those of `infer` by a year or so.
Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open, const Surroundings& around);

// A piece in that fit. For a door in a hurry the fit may be of an earlier show (desk/warm.h),
// if the piece was in it: makers and pieces that its answers name may be gone.
struct FittedPiece {
  std::shared_ptr<const Fitted> fitted;
  std::size_t row = 0;  // of the piece in the fit
};
Result<FittedPiece> fitted_piece(OpenShow& open,
                                 const model::Piece& piece,
                                 const Surroundings& around);

}  // namespace backmark::desk
