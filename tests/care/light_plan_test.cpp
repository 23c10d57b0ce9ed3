#include "care/light_plan.h"

#include <doctest/doctest.h>

#include "small_show.h"

using namespace backmark;
using namespace backmark::care;

namespace {

struct Planned {
  std::vector<CaseContents> contents;
  std::vector<PieceLight> plan;
};

Planned plan_of(SmallShow& small, const LightWish& wish) {
  const model::Show& show = small.settled();
  Planned planned;
  planned.contents = contents_of(show);
  planned.plan = light_plan(show, planned.contents, wish);
  return planned;
}

const LightWish year{.rule = "CIE 157", .opens = 20000, .days = 312};

}  // namespace

// 50 lx, 8 h a day, 6 days a week, 52 weeks are 124 800 lx h: M. McCormick-Goodhart, Megalux
// Hours Explained, Aardenburg Imaging 2019.
TEST_CASE("fifty lux for eight hours on 312 days are 124 800 lux hours") {
  SmallShow small;
  const auto in = small.add_case(8);
  const auto piece = small.add_piece("A 1", "silver");
  small.see(piece, small.cord, "braided cotton");
  small.see(piece, small.colour, "black");
  small.put(piece, in);
  small.measure(in, 50);
  const auto planned = plan_of(small, year);
  const PieceLight& one = planned.plan.front();
  REQUIRE(one.dose);
  CHECK(one.dose->value == doctest::Approx(124800));
  // CIE 157:2004, R2: 50 lx and 150 000 lx h a year.
  CHECK(one.may.run.value == doctest::Approx(150000));
  CHECK_FALSE(one.over_run());
  CHECK_FALSE(one.over_level());
  // Blue wool 4 without ultraviolet: 10 million lux hours to one fade (light.csv of the CCI
  // table).
  CHECK(one.share_of_fade == doctest::Approx(0.01248));
}

// A lamp 0.6 m above a table that gives 15 lx below has 5.4 cd and gives 3.24 lx 0.8 m to the
// side: a solved exercise of school physics.
TEST_CASE("a lamp lights what lies beside its foot less") {
  SmallShow small;
  const auto in = small.add_case();
  const auto below = small.add_piece("A 1", "silver");
  const auto aside = small.add_piece("A 2", "silver");
  small.add(model::Placement{.piece = below, .in = in, .x_mm = 100, .y_mm = 500});
  small.add(model::Placement{.piece = aside, .in = in, .x_mm = 900, .y_mm = 500});
  small.add(model::Fixture{
      .in = in, .name = "a", .intensity_cd = 5.4, .x_mm = 100, .y_mm = 500, .z_mm = 600});
  const auto planned = plan_of(small, year);
  CHECK(planned.plan[0].light.lux->value == doctest::Approx(15));
  CHECK(planned.plan[1].light.lux->value == doctest::Approx(3.24).epsilon(0.001));
  CHECK(planned.plan[0].fade_mlxh == 0);  // silver does not fade
}

TEST_CASE(
    "what a meter showed stands before what lamps should give, at the piece before the case") {
  SmallShow small;
  const auto in = small.add_case();
  const auto one = small.add_piece("A 1", "silver");
  const auto two = small.add_piece("A 2", "silver");
  small.put(one, in);
  small.put(two, in);
  small.add(model::Fixture{
      .in = in, .name = "a", .intensity_cd = 500, .x_mm = 500, .y_mm = 500, .z_mm = 1000});
  small.measure(in, 60);
  small.add(model::LightReading{.piece = two, .in = in, .lux = 70, .day = 20001});
  const auto planned = plan_of(small, year);
  CHECK(planned.plan[0].light.lux->value == 60);
  CHECK(planned.plan[1].light.lux->value == 70);
}

TEST_CASE("without hours or level there is no dose, and the question stands in its place") {
  SmallShow small;
  const auto in =
      small.add(model::Case{.key = "dark", .width_mm = 100, .height_mm = 100, .depth_mm = 100});
  small.put(small.add_piece("A 1", "silver"), in);
  const auto planned = plan_of(small, year);
  CHECK_FALSE(planned.plan.front().dose);
  CHECK(planned.plan.front().ask.size() == 2);
}

TEST_CASE("light of the year before is taken off, older light is not") {
  SmallShow small;
  const auto in = small.add_case();
  const auto piece = small.add_piece("A 1", "silk");
  small.put(piece, in);
  small.measure(in, 50);
  small.add(model::Exposure{.piece = piece, .lux_hours = 4000, .day = 19900});
  small.add(model::Exposure{.piece = piece, .lux_hours = 9000, .day = 15000});
  const auto planned = plan_of(small, year);
  const PieceLight& one = planned.plan.front();
  CHECK(one.may.run.value == doctest::Approx(11000));  // R3: 15 000 a year
  CHECK(one.may.past.value == doctest::Approx(13000));
  CHECK(one.over_run());
  CHECK(one.share_with_past > one.share_of_fade);
}

TEST_CASE("a run of two years may have twice a year's light") {
  SmallShow small;
  const auto in = small.add_case();
  small.put(small.add_piece("A 1", "silk"), in);
  small.measure(in, 50);
  LightWish two = year;
  two.days = 730;
  CHECK(plan_of(small, two).plan.front().may.run.value == doctest::Approx(30000));
}

TEST_CASE("a lender who asks for less is heard, one who allows more is not") {
  SmallShow small;
  const auto in = small.add_case();
  const auto lender = small.add(model::Lender{.code = "Lender 1"});
  const auto piece = small.add(model::Piece{.number = "A 1", .lender = lender});
  small.see(piece, small.material, "silk");
  small.put(piece, in);
  small.measure(in, 50);
  small.add(model::Requirement{.lender = lender, .lux = 30, .lux_hours_year = 90000});
  const auto planned = plan_of(small, year);
  CHECK(planned.plan.front().may.level.value == 30);
  CHECK(planned.plan.front().may.level_from == "Lender 1");
  CHECK(planned.plan.front().may.run.value == doctest::Approx(15000));
  CHECK(planned.plan.front().over_level());
}

TEST_CASE("ultraviolet that nobody measured is counted as there") {
  SmallShow small;
  const auto in = small.add_case();
  small.put(small.add_piece("A 1", "silk"), in);
  small.add(model::LightReading{.in = in, .lux = 50, .day = 20000});
  const auto planned = plan_of(small, year);
  CHECK(planned.plan.front().fade_with_uv);
  CHECK(planned.plan.front().fade_mlxh == doctest::Approx(0.22));  // blue wool 1, with
}

TEST_CASE("the two rules differ where they should") {
  SmallShow small;
  const auto in = small.add_case();
  small.put(small.add_piece("A 1", "silk"), in);
  small.measure(in, 50);
  LightWish merged = year;
  merged.rule = "merged";
  CHECK(plan_of(small, merged).plan.front().may.run.value == doctest::Approx(150000));
}
