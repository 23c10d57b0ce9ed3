// Hide and find again: what is known of some pieces is taken away, the rest of the show
// reckoned, and the hidden years and makers foretold.
#pragma once

#include <vector>

#include "evidence/calibrate.h"
#include "evidence/reckon.h"

namespace backmark::evidence {

struct TrialPlan {
  std::size_t folds = 10;  // at least 2: so many times the show is reckoned anew
  bool by_lot = false;     // whole lots are hidden; otherwise pieces
};

struct Trials {
  std::vector<YearTrial> years;    // groups: form, place, section, decade, lot
  std::vector<MakerTrial> makers;  // listed: at least five pieces by the hand stayed in view
  std::vector<std::string> notes;  // what stayed in view
};

// Hidden of a piece is what makes its year and maker known (hide_known in gather.h), and what a
// character that has some maker's lineage shows on it (a stamp names its owner). Limits,
// stories and opinions stay in view, as they stand on unknown pieces too. Folds are dealt by
// chance from the seed. Problems: bad_input (folds, or too little is known); refused (stopped).
Result<Trials> run_trials(const model::Show& show,
                          const ReckonSettings& settings,
                          const TrialPlan& plan,
                          const Watch& watch);

// Trials, scored.
model::Calibration calibration_of(const Trials& trials, const TrialPlan& plan);

}  // namespace backmark::evidence
