// What every page says of a show before anything else is asked.
#pragma once

#include "base/json_fwd.h"
#include "desk/open.h"

namespace backmark::desk {

// {show, title, opening_day, days_to_opening, counts: {pieces, makers, sources, waiting},
// inferred, stale, change}; the day is an ISO day or null, `waiting` counts pieces that nobody
// picked yet. Problems: io.
Result<Json> overview(OpenShow& open, std::int64_t now);

}  // namespace backmark::desk
