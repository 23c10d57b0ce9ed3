// The tasks that lead to an opening with a book, as a list to begin from.
#pragma once

#include <string>
#include <vector>

namespace backmark::reference {

struct ScheduleTask {
  std::string task;   // key
  std::string group;  // "book"
  std::string title;
  std::string after;      // keys parted by spaces
  double least_days = 0;  // calendar days
  double likely_days = 0;
  double greatest_days = 0;
  std::string holds;  // pieces it holds up: "show", "book", "loan" or nothing
  std::string source;
  std::string status;
};

// Rows of schedule-tasks.csv.
const std::vector<ScheduleTask>& schedule_tasks();

}  // namespace backmark::reference
