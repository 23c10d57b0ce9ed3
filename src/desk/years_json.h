// The Years page as JSON.
#pragma once

#include "base/json_fwd.h"
#include "desk/use_chart.h"

namespace backmark::desk {

// What `years` answers, but for the calibration. `last` may be null: never reckoned. With
// `beads` every row lists its pieces, each with a year and what does not fit.
Json years_json(const UseChart& chart,
                const std::vector<const evidence::UseGroup*>& groups,
                const LastRun* last,
                bool beads);

}  // namespace backmark::desk
