// Task lists in and out: the shipped one, a curator's CSV, and a calendar.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "curate/schedule.h"
#include "desk/list_file.h"
#include "model/show.h"

namespace backmark::desk {

// The list of the show; as long as it keeps none, the one to begin from, as
// reference/schedule-tasks.csv has it (tasks without an id).
std::vector<model::Task> tasks_of(const model::Show& show);
std::vector<model::Task> usual_tasks();

// "show", "book", "loan", or nothing. Problem: bad_input.
Result<model::Holds> read_holds(std::string_view text);
std::string_view to_text(model::Holds holds);

// A list with the headings task, title, after, least, likely, greatest and, if wanted, group,
// holds and done, in any order; `after` parts keys by spaces. Problems: those of open_list.
Result<ListRead<model::Task>> read_tasks(const Path& path);

// What read_tasks reads.
std::string tasks_csv(const std::vector<model::Task>& tasks);

// An iCalendar file (RFC 5545) of all tasks not yet done: each a whole-day entry from its
// latest start to its latest finish. `stamp` is seconds since 1970 UTC.
std::string to_calendar(const curate::Schedule& schedule, std::int64_t stamp);

}  // namespace backmark::desk
