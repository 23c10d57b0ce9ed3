// Condition sheets: front, back and tips at true size on a 5 mm grid, earlier findings as
// numbered flags, and room to write what is seen today.
#pragma once

#include "press/job.h"

namespace backmark::press {

// condition.pdf: one page a piece of the show, in its order; with a lender's code only that
// lender's. A state that is no agreed word (reference/condition-words.csv) is a finding and is
// printed all the same. Problems: refused, for an audience that may not see conditions, or an
// empty show.
Result<Printed> print_condition(const PressJob& job);

}  // namespace backmark::press
