// Tasks that lead to an opening day: dates, floats, and the chance of being on time.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "curate/network.h"
#include "model/task.h"

namespace backmark::curate {

// What is asked: the day to be ready for, the day work goes on from, and how chance is drawn.
struct ScheduleWish {
  model::DayNumber opening = model::unknown_day;
  model::DayNumber today = model::unknown_day;
  std::uint64_t seed = 1;
  int draws = 4000;
};

struct TaskDates {
  model::DayNumber earliest_start = 0;
  model::DayNumber latest_start = 0;
  model::DayNumber latest_finish = 0;
  double slack_days = 0;  // to opening day; below 0: late already
  double critical_p = 0;  // share of draws in which it lay on the longest path to either end
  double breaks = 0;      // critical_p times its spread by that of the whole (schedule
                          // sensitivity): how much of the doubt about the day is its own
};

struct Schedule {
  std::vector<model::Task> tasks;
  std::vector<TaskDates> dates;   // one a task
  std::vector<std::size_t> path;  // the critical path
  double expected_days = 0;       // along it, from today
  double p_show = 0;              // chance that the task "open" is reached by opening day
  double p_book = 0;              // and the task "book"
  double p_both = 0;
  double p_path = 0;  // what the critical path alone would say
  double days_p10 = 0, days_p50 = 0, days_p80 = 0, days_p95 = 0;  // until both are reached
  std::vector<std::size_t> breakers;  // at most ten, the most likely to break the day first

  // The last day on which a piece that such tasks hold up may be decided: the earliest of their
  // latest starts. unknown_day: no undone task holds it.
  model::DayNumber decide_by(model::Holds holds) const;
};

// The tasks as a network; one that is done takes no time. Problems: those of Network::of;
// not_found (no task "open", to which everything leads).
Result<Network> to_network(const std::vector<model::Task>& tasks);

// Lays the tasks out backwards from opening day and draws their times (beta distributions of
// the Program Evaluation and Review Technique, independent of each other; done tasks take
// none). Problems: those of to_network; not_found (opening is unknown); bad_input (today is
// unknown; draws below 1). Without a task "book", its chance is that of the show.
Result<Schedule> schedule(std::vector<model::Task> tasks, const ScheduleWish& wish);

}  // namespace backmark::curate
