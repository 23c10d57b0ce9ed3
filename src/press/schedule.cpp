#include "press/schedule.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <set>

#include "base/text.h"
#include "press/lent.h"
#include "press/schedule_wall.h"
#include "press/table.h"
#include "press/type.h"
#include "words/chance.h"

namespace backmark::press {

namespace {

using Kind = TableLine::Kind;
using model::Holds;

constexpr std::string_view caution_first = "Times are drawn as independent.";
constexpr std::string_view caution_rest =
    "One cause that delays several tasks makes lateness likelier.";

// "Thu 26 Nov 2026"
std::string weekday_text(model::DayNumber day) {
  constexpr std::array<std::string_view, 7> names{"Sun", "Mon", "Tue", "Wed",
                                                  "Thu", "Fri", "Sat"};
  const std::chrono::weekday weekday{std::chrono::sys_days{std::chrono::days{day}}};
  return fmt::format("{} {}", names[weekday.c_encoding()], short_day_text(day));
}

std::string month_text(model::DayNumber day) {
  const std::string text = day_text(day);  // "3 March 2031"
  return text.substr(text.find(' ') + 1);
}

std::string slack_text(double days) {
  const double whole = std::floor(days + 1e-9);
  return whole < 0 ? fmt::format("{:.0f} late", -whole) : fmt::format("{:.0f}", whole);
}

// What is still to be done, the earliest latest start first.
std::vector<const PlannedTask*> undone(const PlannedWork& work) {
  std::vector<const PlannedTask*> tasks;
  for (const PlannedTask& one : work.tasks) {
    if (!one.task.done) {
      tasks.push_back(&one);
    }
  }
  std::stable_sort(tasks.begin(), tasks.end(), [](const auto* a, const auto* b) {
    return a->latest_start < b->latest_start;
  });
  return tasks;
}

TableLine row(const PlannedTask& one) {
  return {Kind::row,
          {weekday_text(one.latest_start), weekday_text(one.latest_finish), one.task.title,
           one.task.group, slack_text(one.slack_days),
           one.critical_p >= 0.005 ? fmt::format("{:.0f} %", 100 * one.critical_p) : "–", ""}};
}

struct Decision {
  Holds holds;
  std::string_view what;
};

constexpr std::array<Decision, 3> decisions{
    {{Holds::loan, "Pieces whose loan is not signed"},
     {Holds::show, "Pieces of the show, for cases, mounts and labels"},
     {Holds::book, "Pieces of the book, for pages and plates"}}};

// The last days to decide on pieces: each when the first task begins that they hold up, which
// comes first among those of its kind.
void add_decisions(const std::vector<const PlannedTask*>& tasks,
                   std::vector<TableLine>& lines) {
  std::set<Holds> told{Holds::nothing};
  for (const PlannedTask* one : tasks) {
    if (!told.insert(one->task.holds).second) {
      continue;
    }
    if (told.size() == 2) {
      lines.push_back({Kind::group, {"Last day to decide"}});
    }
    const auto at = std::find_if(decisions.begin(), decisions.end(), [one](const auto& known) {
      return known.holds == one->task.holds;
    });
    lines.push_back(
        {Kind::row,
         {weekday_text(one->latest_start), "", std::string(at->what), "", "", "", ""}});
  }
}

std::vector<TableLine> lines_of(const PlannedWork& work,
                                const std::vector<const PlannedTask*>& tasks) {
  std::vector<TableLine> lines;
  add_decisions(tasks, lines);
  std::string last;
  for (const PlannedTask* one : tasks) {
    const std::string head = one->latest_start < work.today ? "To be begun before today"
                                                            : month_text(one->latest_start);
    if (head != last) {
      lines.push_back({Kind::group, {head}});
      last = head;
    }
    lines.push_back(row(*one));
  }
  return lines;
}

std::string second_line(const PlannedWork& work) {
  return fmt::format(
      "opens {}   ·   {} left   ·   on time: show {}, book {}", day_text(work.opening),
      counted(static_cast<std::size_t>(std::max(0, work.opening - work.today)), "day"),
      words::drawn_chance(work.p_show), words::drawn_chance(work.p_book));
}

Result<std::string> run_sheet(const PressJob& job,
                              const std::vector<const PlannedTask*>& tasks) {
  Sheets sheets(job, {"Schedule",
                      "Begin by the first day at the latest. Float: days to spare. Longest "
                      "path: chance that a delay here delays the opening."});
  const std::vector<Column> columns{{"Begin by", 27},
                                    {"End by", 27},
                                    {"Task", 64, draw::Align::left, false, true},
                                    {"Group", 19, draw::Align::left, true},
                                    {"Float, days", 18, draw::Align::right},
                                    {"Longest path", 18, draw::Align::right},
                                    {"Done by", 13}};
  add_table(sheets, job, columns, lines_of(*job.work, tasks),
            {.row_mm = 7.8,
             .caution_first = std::string(caution_first),
             .caution_rest = std::string(caution_rest)},
            second_line(*job.work));
  return sheets.finish();
}

Result<std::string> wall(const PressJob& job, const std::vector<const PlannedTask*>& tasks) {
  Sheets sheets(job, {"Schedule",
                      "Bar: the task begun as late as may be; filled: as likely as not on the "
                      "longest path. Line: from its earliest start.",
                      a3_landscape});
  const draw::Box body = sheets.body();
  sheets.add(second_line(*job.work), "", [&job, tasks, body](draw::Canvas& canvas) {
    draw_wall(canvas, job, *job.work, tasks, body);
  });
  return sheets.finish();
}

}  // namespace

Result<Printed> print_schedule(const PressJob& job) {
  if (auto allowed = may_print(job, words::FactKind::odds, "schedule"); !allowed) {
    return allowed.problem();
  }
  if (job.work == nullptr) {
    return Problem{Fault::not_found, "there is no opening day to plan for", "schedule",
                   "set it: backmark setting SHOW opens 2027-06-26"};
  }
  const auto tasks = undone(*job.work);
  if (tasks.empty()) {
    return Problem{Fault::not_found, "every task of the schedule is done", "schedule", ""};
  }
  auto sheet = run_sheet(job, tasks);
  if (!sheet) {
    return sheet.problem();
  }
  auto plan = wall(job, tasks);
  if (!plan) {
    return plan.problem();
  }
  Printed printed;
  printed.files = {{"schedule.pdf", *std::move(sheet)},
                   {"schedule-wall.pdf", *std::move(plan)}};
  if (tasks.size() > most_on_wall) {
    printed.findings.push_back({Fault::conflict,
                                fmt::format("{} tasks of {} have no room on the wall plan",
                                            tasks.size() - most_on_wall, tasks.size()),
                                "schedule-wall.pdf", "use the run sheet, which has them all"});
  }
  return printed;
}

}  // namespace backmark::press
