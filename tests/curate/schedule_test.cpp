#include "curate/schedule.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::curate;
using model::Holds;
using model::Task;

namespace {

Task task(std::string key, const std::vector<std::string>& after, ThreePoint time) {
  return {.key = std::move(key),
          .after = join(after, " "),
          .least_days = time.least,
          .likely_days = time.likely,
          .greatest_days = time.greatest};
}

std::string trouble(std::vector<Task> tasks, const ScheduleWish& wish) {
  const auto plan = schedule(std::move(tasks), wish);
  return plan ? "" : to_line(plan.problem());
}

}  // namespace

TEST_CASE("a plan without doubt is dated backwards from opening day") {
  const auto plan = schedule({task("build", {}, {10, 10, 10}), task("open", {"build"}, {})},
                             {.opening = 100, .today = 80});
  REQUIRE(plan);
  CHECK(plan->dates[0].latest_start == 90);
  CHECK(plan->dates[0].latest_finish == 100);
  CHECK(plan->dates[0].slack_days == 10);
  CHECK(plan->p_show == 1);
  CHECK(plan->p_path == 1);
}

TEST_CASE("an opening nearer than the work is late in every draw and has no float") {
  const auto plan = schedule({task("build", {}, {10, 12, 20}), task("open", {"build"}, {})},
                             {.opening = 105, .today = 100});
  REQUIRE(plan);
  CHECK(plan->p_show == 0);
  CHECK(plan->dates[0].slack_days < 0);
  CHECK(plan->dates[0].latest_start < 100);
}

TEST_CASE("drawn times have the mean of the Program Evaluation and Review Technique") {
  // One task of (a, m, b) = (1, 4, 13): mean (1 + 16 + 13) / 6 = 5; the median of the drawn
  // beta distribution, shapes 2 and 4, is 1 + 12 x 0.3138 = 4.766 (beta median by table).
  const auto plan =
      schedule({task("open", {}, {1, 4, 13})}, {.opening = 5, .today = 0, .draws = 20000});
  REQUIRE(plan);
  CHECK(plan->expected_days == doctest::Approx(5));
  CHECK(plan->days_p50 == doctest::Approx(4.766).epsilon(0.02));
  // Chance of at most 5: the regularised incomplete beta function I(1/3; 2, 4)
  // = 1 - (2/3)^5 - 5 (1/3)(2/3)^4 = 131 / 243.
  CHECK(plan->p_show == doctest::Approx(131.0 / 243).epsilon(0.03));
}

TEST_CASE("paths of equal length meet late more often than one of them alone says") {
  std::vector<Task> tasks;
  std::vector<std::string> all;
  for (int i = 0; i < 6; ++i) {
    all.push_back(fmt::format("path{}", i));
    tasks.push_back(task(all.back(), {}, {5, 10, 15}));
  }
  tasks.push_back(task("open", all, {}));
  const auto plan = schedule(tasks, {.opening = 10, .today = 0});
  REQUIRE(plan);
  CHECK(plan->p_path == doctest::Approx(0.5));
  // Six symmetrical times: all at most the middle in 1 of 64.
  CHECK(plan->p_show == doctest::Approx(1.0 / 64).epsilon(0.4));
}

TEST_CASE("the same seed draws the same plan; another draws another") {
  const std::vector<Task> tasks{task("a", {}, {1, 5, 30}), task("open", {"a"}, {1, 2, 9})};
  const auto one = schedule(tasks, {.opening = 12, .today = 0, .seed = 7});
  const auto two = schedule(tasks, {.opening = 12, .today = 0, .seed = 7});
  const auto other = schedule(tasks, {.opening = 12, .today = 0, .seed = 8});
  REQUIRE((one && two && other));
  CHECK(one->days_p80 == two->days_p80);
  CHECK(one->days_p80 != other->days_p80);
}

TEST_CASE("a done task takes no time and holds no piece") {
  Task ask = task("ask", {}, {20, 30, 40});
  ask.holds = Holds::loan;
  const std::vector<Task> tasks{ask, task("open", {"ask"}, {})};
  const auto before = schedule(tasks, {.opening = 50, .today = 0});
  REQUIRE(before);
  CHECK(before->decide_by(Holds::loan) == 20);
  auto done = tasks;
  done[0].done = true;
  const auto after = schedule(done, {.opening = 50, .today = 0});
  REQUIRE(after);
  CHECK(after->expected_days == 0);
  CHECK(after->decide_by(Holds::loan) == model::unknown_day);
}

TEST_CASE("what cannot be planned is refused") {
  const std::vector<Task> good{task("open", {}, {1, 2, 3})};
  CHECK(contains(trouble(good, {.today = 0}), "the show has no opening day"));
  CHECK(contains(trouble(good, {.opening = 5}), "is not a day"));
  CHECK(contains(trouble(good, {.opening = 5, .today = 0, .draws = 0}), "draws are 1"));
  CHECK(contains(trouble({task("a", {}, {})}, {.opening = 5, .today = 0}),
                 "no task is called \"open\""));
  CHECK(contains(trouble({task("open", {"open"}, {})}, {.opening = 5, .today = 0}), "circle"));
}
