// The schedule: a run sheet of all that is to be done before opening day, and a wall plan.
#pragma once

#include "press/job.h"

namespace backmark::press {

// Files: schedule.pdf, undone tasks by the month in which they must begin, with room for who
// has done them, and the last days to decide on pieces; schedule-wall.pdf, the same over the
// weeks on one sheet of A3. Problems: refused (an audience that is not told odds); not_found
// (no plan: no opening day is set).
Result<Printed> print_schedule(const PressJob& job);

}  // namespace backmark::press
