// The checklist: the show in its order, a thumbnail and the facts of each piece.
#pragma once

#include "press/job.h"

namespace backmark::press {

// checklist.pdf and checklist.csv. Problem: refused, if nothing is picked for the show.
Result<Printed> print_checklist(const PressJob& job);

}  // namespace backmark::press
