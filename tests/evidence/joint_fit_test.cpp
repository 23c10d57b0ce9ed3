#include "evidence/joint_fit.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <numeric>

#include "evidence/simulate.h"
#include "rank_test_show.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

Simulated made_up(std::uint64_t seed) {
  Random random(seed);
  return simulate_show(small_plan(), small_settings(), random);
}

JointRun short_run() {
  JointRun run;
  run.chains = 2;
  run.warm_up = 40;
  run.keep = 60;
  run.seed = 5;
  return run;
}

double largest_gap(const std::vector<double>& a, const std::vector<double>& b) {
  double gap = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    gap = std::max(gap, std::abs(a[i] - b[i]));
  }
  return gap;
}

}  // namespace

TEST_CASE("the same seed gives the same answer on one thread and on three") {
  const Simulated simulated = made_up(3);
  const auto one = fit_joint(simulated.show, small_settings(), short_run(), {{}, {}, 1});
  const auto three = fit_joint(simulated.show, small_settings(), short_run(), {{}, {}, 3});
  REQUIRE(one.ok());
  REQUIRE(three.ok());
  for (std::size_t i = 0; i < one->pieces.size(); ++i) {
    CHECK(one->pieces[i].year == three->pieces[i].year);
    CHECK(one->pieces[i].maker == three->pieces[i].maker);
    CHECK(std::accumulate(one->pieces[i].year.begin(), one->pieces[i].year.end(), 0.0) ==
          doctest::Approx(1));
    CHECK(std::accumulate(one->pieces[i].maker.begin(), one->pieces[i].maker.end(), 0.0) ==
          doctest::Approx(1));
  }
  CHECK(one->years.rhat_max == three->years.rhat_max);
}

TEST_CASE("the same show in other years gives the same answer, byte for byte") {
  Simulated simulated = made_up(4);
  const auto here = fit_joint(simulated.show, small_settings(), short_run(), {});
  simulated.show.years = {{-320}, {-261}};
  const auto there = fit_joint(simulated.show, small_settings(), short_run(), {});
  REQUIRE(here.ok());
  REQUIRE(there.ok());
  CHECK(here->pieces[0].year == there->pieces[0].year);
}

TEST_CASE("pieces that do not teach change nothing that is shared") {
  Simulated simulated = made_up(5);
  for (std::size_t i = 30; i < 40; ++i) {
    simulated.show.pieces[i].teaches = false;
  }
  JointChain with(simulated.show, small_settings(), nullptr, Random(9));
  for (int i = 0; i < 10; ++i) {
    with.sweep();
  }
  const double before = with.state().habit_share[0];
  const auto sticks = with.state().stick;
  with.judge_others();
  CHECK(with.state().habit_share[0] == before);
  CHECK(with.state().stick == sticks);
  CHECK(with.state().piece[35].year >= 0);
}

TEST_CASE(
    "a run can be stopped, says how far it is, and can be taken up again with more pieces") {
  Simulated simulated = made_up(6);
  std::stop_source source;
  Watch watch;
  watch.threads = 1;
  double last = 0;
  watch.progress = [&](double share) {
    CHECK(share > last);
    last = share;
    if (share > 0.3) {
      source.request_stop();
    }
  };
  watch.stop = source.get_token();
  const auto cut = fit_joint(simulated.show, small_settings(), short_run(), watch);
  REQUIRE_FALSE(cut.ok());
  CHECK(cut.problem().what == stopped().what);
  CHECK(last < 0.6);

  JointRun first = short_run();
  const auto whole = simulated.show;
  simulated.show.pieces.resize(35);
  const auto cold = fit_joint(simulated.show, small_settings(), first, {});
  REQUIRE(cold.ok());
  JointRun again = short_run();
  again.warm_start = cold->last;
  const auto warm = fit_joint(whole, small_settings(), again, {});
  REQUIRE(warm.ok());
  CHECK(warm->pieces.size() == 40);
}

TEST_CASE("what cannot be is told, and where") {
  Simulated simulated = made_up(7);
  auto broken = simulated.show;
  broken.pieces[2].values[0] = 9;
  auto result = fit_joint(broken, small_settings(), short_run(), {});
  REQUIRE_FALSE(result.ok());
  CHECK(result.problem().what == "value 9 of character 1 does not exist");
  CHECK(result.problem().where == "piece 3");
  broken = simulated.show;
  broken.pieces[0].year_weight.assign(60, 0);
  CHECK(fit_joint(broken, small_settings(), short_run(), {}).problem().what ==
        "what is said of the year leaves no year possible");
  broken = simulated.show;
  broken.makers[1].span.length_mean = 5;
  broken.makers[1].span.length_sd = 1;
  for (std::size_t i = 0; i < 2; ++i) {
    broken.pieces[i].maker = 2;
    broken.pieces[i].named = false;
    broken.pieces[i].year_weight.assign(60, 0);
    broken.pieces[i].year_weight[i == 0 ? 3 : 50] = 1;
  }
  result = fit_joint(broken, small_settings(), short_run(), {});
  REQUIRE_FALSE(result.ok());
  CHECK(result.problem().what ==
        "the maker's dated pieces are 47 years apart, more than a working life");
  CHECK(result.problem().where == "maker 2");
}

TEST_SUITE("slow") {
  TEST_CASE("the order of pieces and the numbers of makers change nothing but chance") {
    const Simulated simulated = made_up(8);
    JointRun run;
    run.keep = 4000;
    run.warm_up = 300;
    run.judge_each = 4;
    const auto plain = fit_joint(simulated.show, small_settings(), run, {});
    JointShow turned = simulated.show;
    std::reverse(turned.pieces.begin(), turned.pieces.end());
    for (JointPiece& piece : turned.pieces) {
      piece.maker = piece.maker > 0 ? 5 - piece.maker : piece.maker;
    }
    run.seed = 77;
    const auto other = fit_joint(turned, small_settings(), run, {});
    REQUIRE(plain.ok());
    REQUIRE(other.ok());
    for (std::size_t i = 0; i < 40; ++i) {
      const auto& a = plain->pieces[i];
      auto b = other->pieces[39 - i];
      std::reverse(b.maker.begin() + 1, b.maker.end());
      CHECK(largest_gap(a.maker, b.maker) < 0.08);
      CHECK(largest_gap(a.year, b.year) < 0.05);
    }
  }
}
