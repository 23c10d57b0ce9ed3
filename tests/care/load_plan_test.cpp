#include "care/load_plan.h"

#include <doctest/doctest.h>

#include "small_show.h"

using namespace backmark;
using namespace backmark::care;

namespace {

struct Planned {
  std::vector<CaseContents> contents;
  LoadPlan plan;
};

Planned plan_of(SmallShow& small) {
  const model::Show& show = small.settled();
  Planned planned;
  planned.contents = contents_of(show);
  planned.plan = load_plan(show, planned.contents);
  return planned;
}

void weigh(SmallShow& small,
           model::Id<model::Piece> piece,
           model::Id<model::Character> mass,
           double g) {
  small.add(model::Observation{.piece = piece, .character = mass, .number = g});
}

model::Id<model::Case> shelved(SmallShow& small, const char* material, double thick_mm) {
  return small.add(model::Case{.key = "c",
                               .width_mm = 1000,
                               .height_mm = 1000,
                               .depth_mm = 400,
                               .shelf = material,
                               .shelf_thick_mm = thick_mm,
                               .shelf_span_mm = 1000});
}

model::Id<model::Character> mass_of(SmallShow& small,
                                    const char* key = "mass",
                                    const char* unit = "g") {
  return small.add(
      model::Character{.key = key, .label = key, .shape = model::Shape::number, .unit = unit});
}

}  // namespace

// 5 w L^4 / (384 E I), I = b t^3 / 12 (beam tables). By hand for glass of E 70 GPa and 2500
// kg/m3, 1000 x 400 x 10 mm: itself 10 kg, w 98.07 N/m, I 3.333e-8 m4, sag 0.547 mm. Ten
// kilograms more, spread evenly: twice that. In the middle: P L^3 / (48 E I) 0.876 mm more.
TEST_CASE("a glass shelf sags under itself and what stands on it") {
  SmallShow small;
  const auto in = shelved(small, "glass", 10);
  const auto mass = mass_of(small);
  for (int i = 0; i < 10; ++i) {
    const auto piece = small.add_piece("A " + std::to_string(i), "silver");
    weigh(small, piece, mass, 1000);
    small.add(model::Placement{.piece = piece, .in = in, .shelf = 1});
  }
  const auto planned = plan_of(small);
  REQUIRE(planned.plan.shelves.size() == 1);
  const ShelfLoad& one = planned.plan.shelves.front();
  CHECK(one.own_kg == doctest::Approx(10));
  CHECK(*one.sag_mm == doctest::Approx(1.0945).epsilon(0.001));
  CHECK(*one.sag_late_mm == doctest::Approx(*one.sag_mm));  // glass does not creep
  CHECK(*one.sag_worst_mm == doctest::Approx(0.5473 + 0.8756).epsilon(0.001));
  // M = w L^2 / 8 + P L / 4 = 12.26 + 24.52 N m; 6 M / (b t^2) = 5.52 MPa.
  CHECK(*one.stress_worst_mpa == doctest::Approx(5.516).epsilon(0.001));
  CHECK(one.ask.empty());
}

TEST_CASE(
    "acrylic goes on sagging, and its maker's limit for lasting load is held against it") {
  SmallShow small;
  const auto in = shelved(small, "acrylic", 3);
  const auto mass = mass_of(small, "weight", "kg");
  const auto piece = small.add_piece("A 1", "silver");
  weigh(small, piece, mass, 5);
  small.add(model::Placement{.piece = piece, .in = in, .shelf = 2});
  const auto planned = plan_of(small);
  const ShelfLoad& one = planned.plan.shelves.front();
  CHECK(one.shelf == 2);
  CHECK(one.pieces_kg == doctest::Approx(5));
  CHECK(*one.sag_late_mm == doctest::Approx(2 * *one.sag_mm));
  CHECK(one.above_stress_limit());
  CHECK(*one.span_by_sag < sag_least);
}

TEST_CASE("thickness doubled, sag of the load an eighth") {
  const auto sag = [](double thick_mm) {
    SmallShow small;
    const auto in = shelved(small, "steel", thick_mm);
    const auto mass = mass_of(small);
    const auto piece = small.add_piece("A 1", "silver");
    weigh(small, piece, mass, 20000);
    small.add(model::Placement{.piece = piece, .in = in, .shelf = 1});
    SmallShow bare;
    const auto own = shelved(bare, "steel", thick_mm);
    bare.add(model::Placement{.piece = bare.add_piece("B", "silver"), .in = own, .shelf = 1});
    return *plan_of(small).plan.shelves.front().sag_mm -
           *plan_of(bare).plan.shelves.front().sag_mm;
  };
  CHECK(sag(5) / sag(10) == doctest::Approx(8));
}

TEST_CASE("what was not weighed, and a shelf of unknown stuff, are asked for") {
  SmallShow small;
  const auto in = shelved(small, "moon cheese", 0);
  small.add(model::Placement{.piece = small.add_piece("A 1", "silver"), .in = in, .shelf = 1});
  const auto planned = plan_of(small);
  const ShelfLoad& one = planned.plan.shelves.front();
  CHECK_FALSE(one.sag_mm);
  CHECK(one.ask.size() == 3);
}

TEST_CASE("a tie on a mount weighs what it was weighed, and its cord hangs doubled") {
  SmallShow small;
  const auto in = shelved(small, "glass", 6);
  const auto mass = mass_of(small);
  const auto length = mass_of(small, "cord_length", "mm");
  const auto piece = small.add_piece("A 1", "silver");
  weigh(small, piece, mass, 51);
  weigh(small, piece, length, 980);
  small.put(piece, in);
  const auto planned = plan_of(small);
  REQUIRE(planned.plan.mounts.size() == 1);
  CHECK(*planned.plan.mounts[0].newtons == doctest::Approx(0.5001).epsilon(0.001));
  CHECK(*planned.plan.mounts[0].drop_mm == 490);
  CHECK(planned.plan.shelves.empty());
}
