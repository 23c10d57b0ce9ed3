#include "desk/task_list.h"

#include <algorithm>
#include <chrono>

#include "base/csv_write.h"
#include "base/text.h"
#include "reference/schedule_task.h"

namespace backmark::desk {

namespace {

using model::Holds;
using model::Task;

constexpr std::string_view hold_words[] = {"", "show", "book", "loan"};

bool is_yes(std::string_view text) {
  return text == "yes" || text == "done" || text == "1" || text == "x";
}

Result<Task> read_task(const ListRow& row) {
  Task task;
  task.key = std::string(row.at("task"));
  task.title = row.at("title").empty() ? task.key : std::string(row.at("title"));
  task.group = std::string(row.at("group"));
  task.after = std::string(row.at("after"));
  task.done = is_yes(row.at("done"));
  const auto least = to_number(row.at("least"));
  const auto likely = to_number(row.at("likely"));
  const auto greatest = to_number(row.at("greatest"));
  if (!least || !likely || !greatest) {
    return Problem{Fault::bad_input, "least, likely and greatest are not all numbers", "",
                   "write calendar days, for example 5, 10, 20"};
  }
  task.least_days = *least;
  task.likely_days = *likely;
  task.greatest_days = *greatest;
  const auto holds = read_holds(row.at("holds"));
  if (!holds) {
    return holds.problem();
  }
  task.holds = *holds;
  return task;
}

// "20270626" for a day.
std::string calendar_day(model::DayNumber day) {
  const std::chrono::year_month_day date{std::chrono::sys_days(std::chrono::days(day))};
  return fmt::format("{:04}{:02}{:02}", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

std::string calendar_text(std::string text) {
  for (const char* sign : {"\\", ";", ","}) {
    text = replace_all(std::move(text), sign, std::string("\\") + sign);
  }
  return replace_all(std::move(text), "\n", "\\n");
}

// Lines of more than 75 bytes go on behind a line break and a space, between code points.
void add_line(std::string& out, const std::string& line) {
  std::size_t used = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const bool begins = (static_cast<unsigned char>(line[i]) & 0xC0U) != 0x80U;
    if (begins && used >= 70) {
      out += "\r\n ";
      used = 1;
    }
    out += line[i];
    ++used;
  }
  out += "\r\n";
}

}  // namespace

Result<Holds> read_holds(std::string_view text) {
  for (std::size_t i = 0; i < std::size(hold_words); ++i) {
    if (hold_words[i] == text) {
      return static_cast<Holds>(i);
    }
  }
  return Problem{Fault::bad_input, fmt::format("\"{}\" holds no pieces", text), "",
                 "write show, book, loan or nothing"};
}

std::string_view to_text(Holds holds) {
  return hold_words[static_cast<std::size_t>(holds)];
}

std::vector<Task> usual_tasks() {
  std::vector<Task> tasks;
  for (const reference::ScheduleTask& row : reference::schedule_tasks()) {
    const auto holds = read_holds(row.holds);
    tasks.push_back({.key = row.task,
                     .group = row.group,
                     .title = row.title,
                     .after = row.after,
                     .least_days = row.least_days,
                     .likely_days = row.likely_days,
                     .greatest_days = row.greatest_days,
                     .holds = holds ? *holds : Holds::nothing});
  }
  return tasks;
}

std::vector<Task> tasks_of(const model::Show& show) {
  const auto& kept = show.all<Task>();
  return kept.empty() ? usual_tasks() : std::vector<Task>(kept.begin(), kept.end());
}

Result<ListRead<Task>> read_tasks(const Path& path) {
  return read_list<Task>(path, {"task", "after", "least", "likely", "greatest"},
                         "task, group, title, after, least, likely, greatest, holds, done",
                         read_task);
}

std::string tasks_csv(const std::vector<Task>& tasks) {
  std::string out;
  append_csv_row(
      out, {"task", "group", "title", "after", "least", "likely", "greatest", "holds", "done"});
  for (const Task& task : tasks) {
    append_csv_row(
        out,
        {task.key, task.group, task.title, task.after, fmt::format("{:g}", task.least_days),
         fmt::format("{:g}", task.likely_days), fmt::format("{:g}", task.greatest_days),
         std::string(to_text(task.holds)), task.done ? "yes" : ""});
  }
  return out;
}

std::string to_calendar(const curate::Schedule& schedule, std::int64_t stamp) {
  const auto day = static_cast<model::DayNumber>(stamp / 86400);
  const std::int64_t second = stamp % 86400;
  const std::string moment = fmt::format("{}T{:02}{:02}{:02}Z", calendar_day(day),
                                         second / 3600, second / 60 % 60, second % 60);
  std::string out;
  add_line(out, "BEGIN:VCALENDAR");
  add_line(out, "VERSION:2.0");
  add_line(out, "PRODID:-//Backmark//schedule//EN");
  for (std::size_t i = 0; i < schedule.tasks.size(); ++i) {
    const Task& task = schedule.tasks[i];
    if (task.done) {
      continue;
    }
    const auto& dates = schedule.dates[i];
    // The end of a whole-day entry is the day behind it.
    const auto end = std::max(dates.latest_finish, dates.latest_start + 1);
    add_line(out, "BEGIN:VEVENT");
    add_line(out, "UID:" + task.key + "@backmark");
    add_line(out, "DTSTAMP:" + moment);
    add_line(out, "DTSTART;VALUE=DATE:" + calendar_day(dates.latest_start));
    add_line(out, "DTEND;VALUE=DATE:" + calendar_day(end));
    add_line(out, "SUMMARY:" + calendar_text(task.title));
    add_line(out, "DESCRIPTION:" +
                      calendar_text(fmt::format(
                          "Latest start. Float {:.0f} days; waits for: {}", dates.slack_days,
                          task.after.empty() ? "nothing" : task.after)));
    add_line(out, "END:VEVENT");
  }
  add_line(out, "END:VCALENDAR");
  return out;
}

}  // namespace backmark::desk
