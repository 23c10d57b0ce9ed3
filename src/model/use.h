// How long something was in use, as rooms hand it to each other.
#pragma once

#include "base/year.h"

namespace backmark::model {

// An end of a stretch of years: its middle and the 10 and 90 points in 100.
struct YearEnd {
  Year p10, p50, p90;
};

}  // namespace backmark::model
