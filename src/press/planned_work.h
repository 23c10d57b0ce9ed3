// The work that leads to opening day, as the schedule of the show has it: values in, for
// papers.
#pragma once

#include <vector>

#include "model/id.h"
#include "model/task.h"

namespace backmark::press {

struct PlannedTask {
  model::Task task;
  model::DayNumber earliest_start = model::unknown_day;
  model::DayNumber latest_start = model::unknown_day;
  model::DayNumber latest_finish = model::unknown_day;
  double slack_days = 0;  // below 0: late already
  double critical_p = 0;  // chance that it lies on the longest path
};

struct PlannedWork {
  std::vector<PlannedTask> tasks;
  model::DayNumber opening = model::unknown_day;
  model::DayNumber today = model::unknown_day;
  double p_show = 0;  // chance of opening on the day
  double p_book = 0;  // and of having the book in hand
};

}  // namespace backmark::press
