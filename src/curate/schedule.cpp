#include "curate/schedule.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/random.h"
#include "base/text.h"

namespace backmark::curate {

namespace {

// A time of three points as a beta distribution whose mean is near (a + 4m + b) / 6: shapes
// 1 + 4 (m - a) / (b - a) and 1 + 4 (b - m) / (b - a).
double draw_time(const ThreePoint& time, Random& random) {
  const double width = time.greatest - time.least;
  if (width <= 0) {
    return time.likely;
  }
  const double low = random.gamma(1 + 4 * (time.likely - time.least) / width);
  const double high = random.gamma(1 + 4 * (time.greatest - time.likely) / width);
  return time.least + width * low / (low + high);
}

double quantile(const std::vector<double>& sorted, double share) {
  const auto at = static_cast<std::size_t>(share * static_cast<double>(sorted.size() - 1));
  return sorted[at];
}

double spread(const std::vector<double>& values) {
  const double n = static_cast<double>(values.size());
  const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
  double squares = 0;
  for (const double value : values) {
    squares += (value - mean) * (value - mean);
  }
  return std::sqrt(squares / n);
}

std::optional<Problem> trouble_with(const ScheduleWish& wish) {
  if (wish.opening == model::unknown_day) {
    return Problem{Fault::not_found, "the show has no opening day", "",
                   "write \"backmark setting SHOW opens 2027-06-26\""};
  }
  if (wish.today == model::unknown_day) {
    return Problem{Fault::bad_input, "the day work goes on from is not a day", "--today",
                   "write it as 2026-11-25"};
  }
  if (wish.draws < 1 || wish.draws > 1000000) {
    return Problem{Fault::bad_input, "draws are 1 to 1000000", "--draws",
                   "leave it out for 4000"};
  }
  return std::nullopt;
}

// What the draws say, gathered draw by draw.
struct Tally {
  std::vector<double> critical;  // draws in which a task lay on the longest path
  std::vector<double> totals;
  double show = 0, book = 0, both = 0;
};

Tally draw_all(const Network& network, const ScheduleWish& wish) {
  const std::size_t open = network.find("open");
  const std::size_t book = network.find("book") < network.size() ? network.find("book") : open;
  const double due = wish.opening - wish.today;
  Tally tally{std::vector<double>(network.size(), 0), {}, 0, 0, 0};
  std::vector<double> times(network.size());
  Random random(wish.seed);
  for (int draw = 0; draw < wish.draws; ++draw) {
    for (std::size_t i = 0; i < network.size(); ++i) {
      times[i] = draw_time(network.activities()[i].time, random);
    }
    const Pass pass = pass_over(network, times);
    const bool shown = pass.earliest_finish[open] <= due;
    const bool printed = pass.earliest_finish[book] <= due;
    tally.show += shown ? 1 : 0;
    tally.book += printed ? 1 : 0;
    tally.both += shown && printed ? 1 : 0;
    tally.totals.push_back(pass.duration);
    for (std::size_t i = 0; i < network.size(); ++i) {
      tally.critical[i] += pass.slack(i) <= 1e-9 * std::max(1.0, pass.duration) ? 1 : 0;
    }
  }
  return tally;
}

void put_chances(Schedule& made,
                 const Network& network,
                 Tally tally,
                 const ScheduleWish& wish) {
  const double n = wish.draws;
  made.p_show = tally.show / n;
  made.p_book = tally.book / n;
  made.p_both = tally.both / n;
  const double whole = std::max(1e-9, spread(tally.totals));
  std::sort(tally.totals.begin(), tally.totals.end());
  made.days_p10 = quantile(tally.totals, 0.1);
  made.days_p50 = quantile(tally.totals, 0.5);
  made.days_p80 = quantile(tally.totals, 0.8);
  made.days_p95 = quantile(tally.totals, 0.95);
  for (std::size_t i = 0; i < made.tasks.size(); ++i) {
    TaskDates& dates = made.dates[i];
    dates.critical_p = tally.critical[i] / n;
    dates.breaks =
        dates.critical_p * std::sqrt(network.activities()[i].time.variance()) / whole;
    if (dates.breaks > 0) {
      made.breakers.push_back(i);
    }
  }
  std::stable_sort(made.breakers.begin(), made.breakers.end(),
                   [&](std::size_t a, std::size_t b) {
                     return made.dates[a].breaks > made.dates[b].breaks;
                   });
  made.breakers.resize(std::min<std::size_t>(10, made.breakers.size()));
}

void put_dates(Schedule& made, const Pass& pass, const ScheduleWish& wish) {
  const double spare = wish.opening - wish.today - pass.duration;
  const auto day = [&](double days) {
    return wish.today + static_cast<model::DayNumber>(std::floor(days + 1e-9));
  };
  for (std::size_t i = 0; i < made.tasks.size(); ++i) {
    made.dates.push_back({.earliest_start = day(pass.earliest_start[i]),
                          .latest_start = day(pass.latest_start[i] + spare),
                          .latest_finish = day(pass.latest_finish[i] + spare),
                          .slack_days = pass.slack(i) + spare});
  }
}

Activity to_activity(const model::Task& task) {
  Activity work{.name = task.key, .after = {}, .time = {}};
  for (const auto key : split(task.after, " ")) {
    if (!key.empty()) {
      work.after.emplace_back(key);
    }
  }
  if (!task.done) {
    work.time = {task.least_days, task.likely_days, task.greatest_days};
  }
  return work;
}

}  // namespace

model::DayNumber Schedule::decide_by(model::Holds holds) const {
  model::DayNumber earliest = model::unknown_day;
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    const bool counts = tasks[i].holds == holds && !tasks[i].done;
    if (counts && (earliest == model::unknown_day || dates[i].latest_start < earliest)) {
      earliest = dates[i].latest_start;
    }
  }
  return earliest;
}

Result<Network> to_network(const std::vector<model::Task>& tasks) {
  std::vector<Activity> activities;
  for (const model::Task& task : tasks) {
    activities.push_back(to_activity(task));
  }
  auto network = Network::of(std::move(activities));
  if (network && network->find("open") == network->size()) {
    return Problem{Fault::not_found, "no task is called \"open\"", "",
                   "the task that everything leads to on opening day has the key \"open\""};
  }
  return network;
}

Result<Schedule> schedule(std::vector<model::Task> tasks, const ScheduleWish& wish) {
  if (auto trouble = trouble_with(wish)) {
    return *trouble;
  }
  const auto network = to_network(tasks);
  if (!network) {
    return network.problem();
  }
  Schedule made;
  made.tasks = std::move(tasks);
  const Pass pass = pass_over(*network);
  made.expected_days = pass.duration;
  made.path = critical_path(*network, pass);
  made.p_path = chance_along_path(*network, wish.opening - wish.today);
  put_dates(made, pass, wish);
  put_chances(made, *network, draw_all(*network, wish), wish);
  return made;
}

}  // namespace backmark::curate
