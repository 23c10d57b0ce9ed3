// The last answer of `calibrate`, kept as prints/calibration.json.
#pragma once

#include "base/json_fwd.h"
#include "desk/open.h"

namespace backmark::desk {

// Problems: those of write_file.
Result<Done> keep_calibration(OpenShow& open, Json answer, std::int64_t now);

// With "at", and "stale": what bears on years and makers changed since. Null: none was kept, or
// the file is not one.
Json kept_calibration(OpenShow& open);

}  // namespace backmark::desk
