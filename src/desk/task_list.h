// Task lists in and out: the shipped one, a curator's CSV, and a calendar.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "curate/schedule.h"

namespace backmark::desk {

// The list to begin from, as reference/schedule-tasks.csv has it.
std::vector<curate::Task> usual_tasks();

// A CSV with the headings task, title, after, least, likely, greatest and, if wanted, group,
// holds and done, in any order; `after` parts keys by spaces. `name` stands in problems: all
// faulty rows, each with its row.
struct TaskRows {
  std::vector<curate::Task> tasks;
  Problems problems;
};
TaskRows read_tasks(std::string_view csv, const std::string& name);

// What read_tasks reads.
std::string tasks_csv(const std::vector<curate::Task>& tasks);

// An iCalendar file (RFC 5545) of all tasks not yet done: each a whole-day entry from its
// latest start to its latest finish. `stamp` is seconds since 1970 UTC.
std::string to_calendar(const curate::Schedule& schedule, std::int64_t stamp);

}  // namespace backmark::desk
