// The show's schedule as its paper needs it.
#pragma once

#include <optional>
#include <vector>

#include "desk/open.h"
#include "press/outputs.h"

namespace backmark::desk {

// If the schedule is among the papers; nothing if it is not, or as long as no opening day is
// set. Today is the day of the call. Problems: those of curate::schedule.
Result<std::optional<press::PlannedWork>> work_wanted(
    const Surroundings& around,
    const OpenShow& open,
    const std::vector<const press::Output*>& outputs);

}  // namespace backmark::desk
