#include "evidence/stack.h"

#include <cmath>
#include <doctest/doctest.h>

#include "base/random.h"
#include "evidence/minimise.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

// Targets whose year is drawn from exp(0.8 * first line); the second line is chance.
StackTask drawn(std::size_t targets) {
  StackTask task;
  task.bins = {{{1900}, {1949}}, 1};
  task.prior = {0.3, 0.3};
  task.ridge = 1;
  Random random(3);
  for (std::size_t j = 0; j < targets; ++j) {
    StackTarget target;
    std::vector<double> weight;
    for (int t = 0; t < 100; ++t) {
      target.lines.push_back(static_cast<float>(random.normal()));
      if (t < 50) {
        weight.push_back(std::exp(0.8 * static_cast<double>(target.lines.back())));
      }
    }
    const int year = 1900 + static_cast<int>(random.weighted(weight));
    target.stated = {{year}, {year + static_cast<int>(j % 2)}};
    task.targets.push_back(std::move(target));
  }
  return task;
}

}  // namespace

TEST_CASE("the slope of the stack's score is what small steps give") {
  auto task = drawn(40);
  std::vector<double> at{0.5, 0.2};
  SUBCASE("with a scale of its own for the priors") {
    task.scaled = 1;
    at.push_back(0.4);
  }
  SUBCASE("without") {}
  std::vector<double> slope;
  (void)stack_score(task, {}, at, slope);
  for (std::size_t line = 0; line < at.size(); ++line) {
    auto above = at;
    auto below = at;
    above[line] += 1e-5;
    below[line] -= 1e-5;
    std::vector<double> unused;
    const double measured =
        (stack_score(task, {}, above, unused) - stack_score(task, {}, below, unused)) / 2e-5;
    CHECK(slope[line] == doctest::Approx(measured).epsilon(1e-5));
  }
}

TEST_CASE("a line that tells the year gets its true weight, a line of chance none") {
  const auto b = fit_stack(drawn(1500), {});
  REQUIRE(b.ok());
  CHECK(b->b[0] == doctest::Approx(0.8).epsilon(0.15));
  CHECK(b->b[1] < 0.12);
}

TEST_CASE("an empty line changes nothing") {
  const std::vector<std::vector<double>> lines{{}, {0, std::log(3.0)}};
  const auto p = stacked({0.7, 1}, lines, 2);
  CHECK(p[0] == doctest::Approx(0.25));
}

TEST_CASE("the lowest point is found inside its limits") {
  // Rosenbrock's valley (Rosenbrock 1960): lowest at (1, 1).
  const Smooth valley = [](const std::vector<double>& x, std::vector<double>& slope) {
    const double bend = x[1] - x[0] * x[0];
    slope = {-400 * x[0] * bend - 2 * (1 - x[0]), 200 * bend};
    return 100 * bend * bend + (1 - x[0]) * (1 - x[0]);
  };
  const auto free = minimise(valley, {-1.2, 1}, {{}, 500, 1e-14});
  CHECK(free[0] == doctest::Approx(1).epsilon(1e-4));
  CHECK(free[1] == doctest::Approx(1).epsilon(1e-4));
  const Smooth bowl = [](const std::vector<double>& x, std::vector<double>& slope) {
    slope = {2 * (x[0] + 1)};
    return (x[0] + 1) * (x[0] + 1);
  };
  CHECK(minimise(bowl, {2}, {{0}, 100, 1e-10})[0] == doctest::Approx(0));
}
