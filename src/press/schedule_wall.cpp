#include "press/schedule_wall.h"

#include <algorithm>
#include <chrono>

#include "press/type.h"

namespace backmark::press {

namespace {

using draw::Align;
using draw::Box;
using draw::Canvas;
using draw::Run;
using model::DayNumber;

constexpr double names_mm = 104;
constexpr double heads_mm = 9;
constexpr double least_row = 4.2;
constexpr double most_row = 7;
constexpr double bar_mm = 2.4;
constexpr double likely = 0.5;  // as likely as not on the longest path

// The first day of the month that holds a day, and of the one after.
std::chrono::year_month_day month_of(DayNumber day) {
  const std::chrono::year_month_day date{std::chrono::sys_days{std::chrono::days{day}}};
  return date.year() / date.month() / std::chrono::day{1};
}

DayNumber first_of(std::chrono::year_month_day month) {
  return static_cast<DayNumber>(std::chrono::sys_days{month}.time_since_epoch().count());
}

// Days along a side of the sheet.
struct Axis {
  DayNumber first = 0;
  DayNumber last = 0;
  double left = 0;
  double width = 0;

  double at(double day) const {
    return left + std::clamp((day - first) / std::max(1, last - first), 0.0, 1.0) * width;
  }
};

Axis axis_of(const PlannedWork& work,
             const std::vector<const PlannedTask*>& tasks,
             const Box& body) {
  Axis axis{work.today, work.opening, body.x + names_mm, body.width - names_mm};
  for (const PlannedTask* one : tasks) {
    axis.first = std::min(axis.first, one->latest_start);
    axis.last = std::max(axis.last, one->latest_finish);
  }
  axis.first = first_of(month_of(axis.first));
  axis.last += 4;
  return axis;
}

// Lines at the first of each month, with its name over them.
void draw_months(Canvas& canvas, const PressJob& job, const Axis& axis, const Box& body) {
  for (auto month = month_of(axis.first); first_of(month) < axis.last;
       month += std::chrono::months{1}) {
    const double x = axis.at(first_of(month));
    canvas.line({x, body.y + heads_mm - 3}, {x, body.bottom()}, draw::rule_grey,
                {0.25 * mm_per_pt});
    const double room = axis.at(first_of(month + std::chrono::months{1})) - x - 2;
    const std::string name = day_text(first_of(month)).substr(2);  // "March 2031"
    draw::show(canvas, job.fonts, {x + 1, body.y + 4.6},
               Run{fitted(job.fonts, name, sheet_quiet(7.2), room), sheet_quiet(7.2)});
  }
}

// A day that all look for: its line, and its name at the foot.
void draw_day(Canvas& canvas,
              const PressJob& job,
              double x,
              const Box& body,
              const std::string& name,
              bool opening) {
  canvas.line({x, body.y + heads_mm - 3}, {x, body.bottom()}, draw::copper,
              {(opening ? 1.0 : 0.5) * mm_per_pt, draw::Cap::butt, draw::Join::miter,
               opening ? std::vector<double>{} : std::vector<double>{1.5, 1.2}});
  draw::show(canvas, job.fonts, {x + (opening ? -1.2 : 1.2), body.bottom() - 1},
             Run{name, sheet_strong(7.2).with(draw::copper)},
             opening ? Align::right : Align::left);
}

void draw_task(Canvas& canvas,
               const PressJob& job,
               const PlannedTask& one,
               const Axis& axis,
               double left,
               double y) {
  const bool leads = one.critical_p >= likely;
  draw::show(canvas, job.fonts, {left, y + 1},
             Run{fitted(job.fonts, one.task.title, leads ? sheet_strong(7.6) : sheet_text(7.6),
                        names_mm - 24),
                 leads ? sheet_strong(7.6) : sheet_text(7.6)});
  draw::show(canvas, job.fonts, {left + names_mm - 4, y + 1},
             Run{fitted(job.fonts, one.task.group, sheet_quiet(6.4), 19), sheet_quiet(6.4)},
             Align::right);
  const double begin = axis.at(one.latest_start);
  const double end = std::max(axis.at(one.latest_finish), begin + 0.8);
  const double early = std::min(axis.at(one.earliest_start), begin);
  canvas.line({early, y}, {end, y}, draw::grey, {0.5 * mm_per_pt});
  canvas.rectangle({begin, y - bar_mm / 2, end - begin, bar_mm});
  canvas.fill_keep(leads ? draw::ink : draw::white);
  canvas.stroke(draw::ink, {0.5 * mm_per_pt});
}

}  // namespace

void draw_wall(Canvas& canvas,
               const PressJob& job,
               const PlannedWork& work,
               const std::vector<const PlannedTask*>& tasks,
               const Box& body) {
  const std::size_t count = std::min(tasks.size(), most_on_wall);
  const double foot = 6;
  const double row = std::clamp(
      (body.height - heads_mm - foot) / static_cast<double>(std::max<std::size_t>(1, count)),
      least_row, most_row);
  const Box chart{body.x, body.y, body.width,
                  heads_mm + static_cast<double>(count) * row + foot};
  const Axis axis = axis_of(work, tasks, body);
  draw_months(canvas, job, axis, chart);
  head_rule(canvas, body.x, body.y + heads_mm - 3, body.width);
  for (std::size_t at = 0; at < count; ++at) {
    const double y = body.y + heads_mm + (static_cast<double>(at) + 0.5) * row;
    draw_task(canvas, job, *tasks[at], axis, body.x, y);
    hairline(canvas, body.x, y + row / 2, body.width);
  }
  draw_day(canvas, job, axis.at(work.today), chart, "today, " + short_day_text(work.today),
           false);
  draw_day(canvas, job, axis.at(work.opening), chart, "opens " + short_day_text(work.opening),
           true);
}

}  // namespace backmark::press
