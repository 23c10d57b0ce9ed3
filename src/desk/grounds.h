// Why pieces have their years and makers, for papers that say so.
#pragma once

#include <functional>
#include <vector>

#include "desk/open.h"
#include "press/outputs.h"

namespace backmark::desk {

using GroundsOf = std::function<press::Grounds(model::Id<model::Piece>)>;

// From the fit that explains pieces everywhere, if the book is among the papers; else, and of a
// show that was never reckoned (no beliefs), empty. Problems: those of fitted_show.
Result<GroundsOf> grounds_wanted(const Surroundings& around,
                                 OpenShow& open,
                                 const model::Beliefs& beliefs,
                                 const std::vector<const press::Output*>& outputs);

}  // namespace backmark::desk
