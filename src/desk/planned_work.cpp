#include "desk/planned_work.h"

#include <algorithm>

#include "curate/schedule.h"
#include "desk/calendar.h"
#include "desk/task_list.h"

namespace backmark::desk {

Result<std::optional<press::PlannedWork>> work_wanted(
    const Surroundings& around,
    const OpenShow& open,
    const std::vector<const press::Output*>& outputs) {
  const bool wanted = std::any_of(outputs.begin(), outputs.end(), [](const auto* output) {
    return output->name == "schedule";
  });
  const auto opening = press::parse_day(open.show.setting("opens"));
  if (!wanted || !opening) {
    return std::optional<press::PlannedWork>();
  }
  const curate::ScheduleWish wish{.opening = *opening, .today = day_of(around.now)};
  const auto plan = curate::schedule(tasks_of(open.show), wish);
  if (!plan) {
    return plan.problem();
  }
  press::PlannedWork work{.tasks = {},
                          .opening = wish.opening,
                          .today = wish.today,
                          .p_show = plan->p_show,
                          .p_book = plan->p_book};
  for (std::size_t at = 0; at < plan->tasks.size(); ++at) {
    const curate::TaskDates& dates = plan->dates[at];
    work.tasks.push_back({plan->tasks[at], dates.earliest_start, dates.latest_start,
                          dates.latest_finish, dates.slack_days, dates.critical_p});
  }
  return std::optional(std::move(work));
}

}  // namespace backmark::desk
