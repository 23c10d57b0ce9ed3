#include "reference/schedule_task.h"

#include "reference/shipped.h"

namespace backmark::reference {

const std::vector<ScheduleTask>& schedule_tasks() {
  static const std::vector<ScheduleTask> list = [] {
    constexpr std::string_view file = "schedule-tasks.csv";
    std::vector<ScheduleTask> tasks;
    for (const auto& cells : own_rows(file)) {
      tasks.push_back({cells[0], cells[1], cells[2], cells[3], own_number(file, cells[4]),
                       own_number(file, cells[5]), own_number(file, cells[6]), cells[7],
                       cells[8], cells[9]});
    }
    return tasks;
  }();
  return list;
}

}  // namespace backmark::reference
