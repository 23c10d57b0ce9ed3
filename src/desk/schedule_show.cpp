#include <algorithm>
#include <map>
#include <tuple>

#include "base/json.h"
#include "base/text.h"
#include "desk/calendar.h"
#include "desk/each.h"
#include "desk/measures.h"
#include "desk/task_list.h"
#include "press/job.h"
#include "words/chance.h"

namespace backmark::desk {

namespace {

using curate::Schedule;
using curate::TaskDates;
using model::DayNumber;
using model::Holds;
using model::Task;

const char* const caution =
    "Times are drawn as independent; one cause that delays several tasks makes lateness "
    "likelier.";

struct PieceLimit {
  std::string number;
  DayNumber decide_by = model::unknown_day;
  std::string because;
};

// The last day to decide on each picked piece, the earliest first.
std::vector<PieceLimit> limits_of(const model::Show& show, const Schedule& plan) {
  std::map<std::int32_t, bool> lent;  // piece to whether its paper is signed
  for (const model::Loan& loan : show.all<model::Loan>()) {
    lent[loan.piece.value] = loan.signed_paper;
  }
  std::vector<PieceLimit> limits;
  for (const model::Pick& pick : show.all<model::Pick>()) {
    PieceLimit limit{show.find(pick.piece)->number, model::unknown_day, ""};
    const auto hold = [&](bool counts, Holds holds, const char* why) {
      const DayNumber day = counts ? plan.decide_by(holds) : model::unknown_day;
      if (day != model::unknown_day &&
          (limit.decide_by == model::unknown_day || day < limit.decide_by)) {
        limit.decide_by = day;
        limit.because = why;
      }
    };
    const auto loan = lent.find(pick.piece.value);
    hold(loan != lent.end() && !loan->second, Holds::loan, "its loan is not signed");
    hold(pick.in_show, Holds::show, "cases, mounts and labels wait for it");
    hold(pick.in_book, Holds::book, "pages and plates wait for it");
    limits.push_back(std::move(limit));
  }
  // What nothing holds up any more stands last.
  std::stable_sort(limits.begin(), limits.end(), [](const PieceLimit& a, const PieceLimit& b) {
    const bool a_open = a.decide_by == model::unknown_day;
    const bool b_open = b.decide_by == model::unknown_day;
    return std::tie(a_open, a.decide_by) < std::tie(b_open, b.decide_by);
  });
  return limits;
}

Json task_json(const Schedule& plan, std::size_t at) {
  const Task& task = plan.tasks[at];
  const TaskDates& dates = plan.dates[at];
  return {{"task", task.key},
          {"group", task.group},
          {"title", task.title},
          {"after", task.after},
          {"days", {task.least_days, task.likely_days, task.greatest_days}},
          {"holds", to_text(task.holds)},
          {"done", task.done},
          {"earliest_start", iso_day(dates.earliest_start)},
          {"latest_start", iso_day(dates.latest_start)},
          {"latest_finish", iso_day(dates.latest_finish)},
          {"float_days", dates.slack_days},
          {"critical_p", dates.critical_p},
          {"breaks", dates.breaks}};
}

std::vector<std::string> names_of(const Schedule& plan,
                                  const std::vector<std::size_t>& places) {
  std::vector<std::string> names;
  for (const std::size_t at : places) {
    names.push_back(plan.tasks[at].key);
  }
  return names;
}

Json to_json(const Schedule& plan,
             const curate::ScheduleWish& wish,
             const std::vector<PieceLimit>& limits) {
  Json tasks = Json::array();
  for (std::size_t i = 0; i < plan.tasks.size(); ++i) {
    tasks.push_back(task_json(plan, i));
  }
  Json pieces = Json::array();
  for (const PieceLimit& limit : limits) {
    pieces.push_back({{"number", limit.number},
                      {"decide_by", iso_day(limit.decide_by)},
                      {"because", limit.because}});
  }
  return {{"opening", iso_day(wish.opening)},
          {"today", iso_day(wish.today)},
          {"seed", wish.seed},
          {"draws", wish.draws},
          {"days_left", wish.opening - wish.today},
          {"expected_days", plan.expected_days},
          {"p_open", plan.p_show},
          {"p_book", plan.p_book},
          {"p_both", plan.p_both},
          {"p_path", plan.p_path},
          {"days",
           {{"p10", plan.days_p10},
            {"p50", plan.days_p50},
            {"p80", plan.days_p80},
            {"p95", plan.days_p95}}},
          {"critical_path", names_of(plan, plan.path)},
          {"breakers", names_of(plan, plan.breakers)},
          {"tasks", tasks},
          {"pieces", pieces},
          {"notes", {caution}}};
}

std::string limits_text(const std::vector<PieceLimit>& limits) {
  std::map<std::pair<DayNumber, std::string>, int> groups;
  for (const PieceLimit& limit : limits) {
    if (limit.decide_by != model::unknown_day) {
      ++groups[{limit.decide_by, limit.because}];
    }
  }
  std::string text = groups.empty() ? "" : "\nLatest day to decide on a piece\n";
  for (const auto& [group, count] : groups) {
    text += fmt::format("  {}  {} {}: {}\n", iso_day(group.first), count,
                        count == 1 ? "piece" : "pieces", group.second);
  }
  return text;
}

std::string to_text(const Schedule& plan,
                    const curate::ScheduleWish& wish,
                    const std::vector<PieceLimit>& limits) {
  std::string text = fmt::format(
      "Opening {}, {} days from {}. Needed: {:.0f} days along the critical path; half of the "
      "draws {:.0f}, eight in ten {:.0f}.\nOpen on time: {}. Book in hand: {}. Both: {}. (The "
      "critical path alone would say {}.)\n",
      to_long_day(wish.opening), wish.opening - wish.today, to_long_day(wish.today),
      plan.expected_days, plan.days_p50, plan.days_p80, words::drawn_chance(plan.p_show),
      words::drawn_chance(plan.p_book), words::drawn_chance(plan.p_both),
      words::drawn_chance(plan.p_path));
  text += "\nMost likely to break the day\n";
  for (const std::size_t at : plan.breakers) {
    text += fmt::format("  {}  critical in {:>3.0f} %  latest start {}  {}\n",
                        padded(plan.tasks[at].key, 13), 100 * plan.dates[at].critical_p,
                        iso_day(plan.dates[at].latest_start), plan.tasks[at].title);
  }
  text += "\nTask           latest start  latest finish  float\n";
  for (std::size_t i = 0; i < plan.tasks.size(); ++i) {
    const TaskDates& dates = plan.dates[i];
    text += fmt::format("  {} {}    {}   {:>6.0f}  {}\n", padded(plan.tasks[i].key, 13),
                        iso_day(dates.latest_start), iso_day(dates.latest_finish),
                        dates.slack_days, plan.tasks[i].done ? "done" : plan.tasks[i].title);
  }
  return text + limits_text(limits) + "\n" + caution + "\n";
}

Result<curate::ScheduleWish> wish_of(const Call& call,
                                     const model::Show& show,
                                     const Surroundings& around) {
  const auto seed = call.whole("seed", 1);
  const auto draws = call.whole("draws", 4000);
  if (!seed || !draws) {
    return seed ? draws.problem() : seed.problem();
  }
  curate::ScheduleWish wish;
  wish.opening = press::parse_day(show.setting("opens")).value_or(model::unknown_day);
  wish.today = call.has("today")
                   ? press::parse_day(call.text("today")).value_or(model::unknown_day)
                   : day_of(around.now);
  wish.seed = static_cast<std::uint64_t>(*seed);
  wish.draws = static_cast<int>(std::clamp(*draws, -1L, 2000000L));
  return wish;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  std::vector<Task> tasks = tasks_of(open->show);
  if (call.flag("csv")) {
    return Answer{.json = Json::object(), .text = tasks_csv(tasks), .problems = {}};
  }
  const auto wish = wish_of(call, open->show, around);
  if (!wish) {
    return wish.problem();
  }
  const auto plan = curate::schedule(std::move(tasks), *wish);
  if (!plan) {
    return plan.problem();
  }
  if (call.has("calendar")) {
    if (auto done = write_file(call.path("calendar"), to_calendar(*plan, around.now)); !done) {
      return done.problem();
    }
  }
  const auto limits = limits_of(open->show, *plan);
  return Answer{.json = to_json(*plan, *wish, limits),
                .text = to_text(*plan, *wish, limits),
                .problems = {}};
}

}  // namespace

Operation schedule_show() {
  return {.name = "schedule",
          .help = "dates back from opening day, floats, and the chance of being on time",
          .parameters = {show_folder(),
                         {.name = "csv",
                          .takes = Takes::flag,
                          .help = "print the list of tasks as CSV, to be edited"},
                         {.name = "calendar",
                          .takes = Takes::file,
                          .help = "write the tasks as an iCalendar file"},
                         {.name = "today", .help = "the day work goes on from, as 2026-11-25"},
                         {.name = "seed", .takes = Takes::whole, .help = "of the draws; 1"},
                         {.name = "draws", .takes = Takes::whole, .help = "how many; 4000"}},
          .run = run};
}

}  // namespace backmark::desk
