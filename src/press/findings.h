// What was found on a piece over the days, one line a finding: the last word counts, and what
// it was before stands beside it.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "model/show.h"

namespace backmark::press {

struct Finding {
  const model::Condition* last = nullptr;
  const model::Condition* before = nullptr;  // the same finding on an earlier day, or null
  bool is_new = false;  // first seen on the last day of looking, with an earlier day before
};

struct Findings {
  std::vector<Finding> list;  // in the order in which they were first seen
  model::DayNumber last_day = model::unknown_day;
  model::DayNumber day_before = model::unknown_day;  // the day of looking before the last
};

// Of every piece with a condition, by the id of the piece. A condition of the same part, state,
// view and place (within 3 mm) as an earlier one of its piece is the same finding seen again.
std::map<std::int32_t, Findings> findings_by_piece(const model::Show& show);

// "seen 2 February 2026", "new since 3 January 2025", "on 3 January 2025: one shallow dent".
std::string since_last(const Finding& finding, const Findings& all);

}  // namespace backmark::press
