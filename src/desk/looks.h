// Looks worth taking and a day's plan, for whoever lists or prints them.
#pragma once

#include "desk/reckoned.h"
#include "desk/warm.h"
#include "model/look.h"

namespace backmark::desk {

// Of --hours and --by: hours 0 asks for no plan.
struct LookWish {
  double hours = 0;
  bool by_lender = false;
  Wants wants = Wants::current;
};
Parameter hours_parameter();
Parameter by_parameter();
// Problem: bad_input, naming the option.
Result<LookWish> look_wish_of(const Call& call);

// From the fit of these settings (desk/fitted.h). Problems: those of Reckoning::fit.
Result<model::LookList> looks_of(OpenShow& open,
                                 const LookWish& wish,
                                 const evidence::ReckonSettings& settings,
                                 const Surroundings& around);

// What is looked at, as lists name it: "Fitting", or "Again: Fitting" for a re-check.
std::string look_label(const model::Show& show,
                       model::Id<model::Character> character,
                       bool again);

}  // namespace backmark::desk
