// The wall plan of the schedule: a bar for each task over the weeks to opening day.
#pragma once

#include "press/planned_work.h"
#include "press/sheet.h"

namespace backmark::press {

// The most tasks that one sheet holds.
inline constexpr std::size_t most_on_wall = 52;

// Draws as many of the tasks, in their order, as a sheet holds: a line from the earliest start
// to the latest finish, a bar over the days it takes if it is begun as late as may be. What is
// as likely as not on the longest path has a filled bar and a strong name.
void draw_wall(draw::Canvas& canvas,
               const PressJob& job,
               const PlannedWork& work,
               const std::vector<const PlannedTask*>& tasks,
               const draw::Box& body);

}  // namespace backmark::press
