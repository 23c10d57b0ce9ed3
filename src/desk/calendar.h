// Days and moments as people write them. UTC throughout: a show's book must read the same
// everywhere.
#pragma once

#include <cstdint>
#include <string>

#include "model/id.h"

namespace backmark::desk {

// "2026-11-25 10:41" of seconds since 1970-01-01.
std::string to_minute(std::int64_t seconds);
// "25 November 2026"; empty for unknown_day.
std::string to_long_day(model::DayNumber day);
// The day a moment falls on.
model::DayNumber day_of(std::int64_t seconds);

}  // namespace backmark::desk
