#include "care/rotation.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>

#include "base/random.h"
#include "small_show.h"

using namespace backmark;
using namespace backmark::care;

namespace {

struct Turned {
  std::vector<CaseContents> contents;
  std::vector<PieceLight> plan;
  Rotation rotation;
};

Turned turned(SmallShow& small, const LightWish& wish) {
  const model::Show& show = small.settled();
  Turned all;
  all.contents = contents_of(show);
  all.plan = light_plan(show, all.contents, wish);
  all.rotation = rotation(show, all.plan, wish);
  return all;
}

// Lux hours that a plan gives each piece must be within what it may have, and no day twice.
void check_within(const Turned& all, const LightWish& wish) {
  for (const Turn& turn : all.rotation.turns) {
    int next = 0;
    for (const Spell& spell : turn.spells) {
      CHECK(spell.first_day == next);
      CHECK(spell.days > 0);
      next += spell.days;
    }
    CHECK(next + turn.empty_days == static_cast<int>(wish.days));
  }
}

const LightWish wish{.rule = "CIE 157", .opens = 20000, .days = 100};

}  // namespace

TEST_CASE("a silk cord goes when its light is spent, and silver takes its place") {
  SmallShow small;
  const auto in = small.add_case(10);
  small.put(small.add_piece("A 1", "silk"), in);
  small.pick_free(small.add_piece("B 1", "silver"));
  small.measure(in, 50);
  const auto all = turned(small, wish);
  // 15 000 lx h at 500 lx h a day: 30 days.
  REQUIRE(all.rotation.turns.size() == 1);
  REQUIRE(all.rotation.turns[0].spells.size() == 2);
  CHECK(all.rotation.turns[0].spells[0].days == 30);
  CHECK(all.rotation.turns[0].spells[1].piece->number == "B 1");
  CHECK(all.rotation.changes == 1);
  CHECK(all.rotation.at_least == 1);
  check_within(all, wish);
}

TEST_CASE("a piece without leave to be shown takes nobody's place") {
  SmallShow small;
  const auto in = small.add_case(10);
  small.put(small.add_piece("A 1", "silk"), in);
  small.add(model::Pick{.piece = small.add_piece("B 1", "silver")});
  small.measure(in, 50);
  const auto all = turned(small, wish);
  CHECK(all.rotation.changes == 0);
  CHECK(all.rotation.turns[0].empty_days == 70);
}

TEST_CASE("three silk cords follow each other where nothing else is free") {
  SmallShow small;
  const auto in = small.add_case(10);
  small.put(small.add_piece("A 1", "silk"), in);
  for (const char* number : {"B 1", "B 2", "B 3"}) {
    small.pick_free(small.add_piece(number, "silk"));
  }
  small.measure(in, 50);
  const auto all = turned(small, wish);
  CHECK(all.rotation.changes == 3);
  CHECK(all.rotation.at_least == 3);
  CHECK(all.rotation.turns[0].empty_days == 0);
  check_within(all, wish);
}

TEST_CASE("nobody changes where everybody may stay") {
  SmallShow small;
  const auto in = small.add_case(10);
  small.put(small.add_piece("A 1", "silver"), in);
  small.measure(in, 50);
  CHECK(turned(small, wish).rotation.turns.empty());
}

// A naive twin: every order in which free pieces could be handed to the places.
namespace {

int fewest_by_trial(const std::vector<std::vector<int>>& days_at,  // of reserve r at place p
                    std::vector<int> left,
                    std::vector<bool> used) {
  const auto open = std::find_if(left.begin(), left.end(), [](int days) { return days > 0; });
  if (open == left.end()) {
    return 0;
  }
  const auto place = static_cast<std::size_t>(open - left.begin());
  int best = 1000;
  for (std::size_t r = 0; r < used.size(); ++r) {
    if (!used[r] && days_at[r][place] > 0) {
      auto rest = left;
      auto now = used;
      rest[place] -= days_at[r][place];
      now[r] = true;
      best = std::min(best, 1 + fewest_by_trial(days_at, rest, now));
    }
  }
  return best;
}

}  // namespace

TEST_CASE("what is called the least is never above the true least, nor a plan below it") {
  Random random(7);
  int exact = 0;
  for (int round = 0; round < 60; ++round) {
    SmallShow small;
    const auto bright = small.add_case(10);
    const auto dim = small.add_case(10);
    small.measure(bright, 50);
    small.measure(dim, 30);
    small.put(small.add_piece("A 1", "silk"), bright);
    small.put(small.add_piece("A 2", "silk"), dim);
    const int free = 2 + static_cast<int>(random.below(4));
    for (int i = 0; i < free; ++i) {
      const auto piece = small.add_piece("B " + std::to_string(i), "silk");
      small.add(model::Exposure{.piece = piece,
                                .lux_hours = 1000.0 * static_cast<double>(random.below(9)),
                                .day = 19990});
      small.pick_free(piece);
    }
    LightWish run = wish;
    run.days = 40 + static_cast<double>(random.below(60));
    const auto all = turned(small, run);
    check_within(all, run);
    std::map<std::string, double> budget;
    for (const auto& had : small.show.all<model::Exposure>()) {
      budget[small.show.find(had.piece)->number] = 15000 - had.lux_hours;
    }
    std::vector<std::vector<int>> days_at;
    for (const auto& [number, left] : budget) {
      days_at.push_back({static_cast<int>(left / 500), static_cast<int>(left / 300)});
    }
    const std::vector<int> left{static_cast<int>(run.days) - 30,
                                static_cast<int>(run.days) - 50};
    const int truth = fewest_by_trial(days_at, left, std::vector<bool>(days_at.size(), false));
    int empty = 0;
    for (const Turn& turn : all.rotation.turns) {
      empty += turn.empty_days;
    }
    if (truth < 1000 && empty == 0) {
      CHECK(all.rotation.at_least <= truth);
      CHECK(all.rotation.changes >= truth);
      exact += all.rotation.changes == truth;
    }
  }
  CHECK(exact >= 20);
}

TEST_CASE("half the light is twice the days") {
  SmallShow small;
  const auto in = small.add_case(10);
  small.put(small.add_piece("A 1", "silk"), in);
  small.measure(in, 50);
  const auto all = turned(small, wish);
  const auto cases = dimmers(all.plan, wish);
  REQUIRE(cases.size() == 1);
  CHECK(cases[0].needed == doctest::Approx(0.30));  // 15 000 of 50 000
  const auto at = [&](double share) {
    return *std::find_if(cases[0].steps.begin(), cases[0].steps.end(),
                         [&](const Dimmed& step) { return step.share == share; });
  };
  CHECK(at(1).days == 30);
  CHECK(at(0.5).days == 60);
  CHECK(at(0.25).days == 100);
  CHECK(at(1).over_run == 1);
  CHECK(at(0.25).over_run == 0);
}
