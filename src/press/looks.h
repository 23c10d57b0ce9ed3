// The look list: what to examine again at the table, in the order of the day's plan.
#pragma once

#include "press/job.h"

namespace backmark::press {

// look.pdf from job.looks: by the stops of its plan (trays or lenders), or without a plan in
// the order of the list, `most_looks` at most. A row a look: picture, piece, what to look at,
// what each answer would leave of the years, minutes, gain as a bar of 0 to 2 bits, and a box
// for the answer. Names of trays and lenders as far as the audience may see them. Problems:
// refused (audience), not_found (no list, or no look in it).
Result<Printed> print_looks(const PressJob& job);

inline constexpr std::size_t most_looks = 120;

}  // namespace backmark::press
