#include "care/sensitivity.h"

#include <doctest/doctest.h>

#include "small_show.h"

using namespace backmark;
using namespace backmark::care;
using reference::LightClass;

namespace {

Sensitivity of(SmallShow& small, model::Id<model::Piece> piece) {
  const model::Show& show = small.settled();
  return most_sensitive(show, *show.find(piece), nullptr);
}

}  // namespace

// Classes: CIE 157:2004 and the table of the Canadian Conservation Institute, as
// light-materials.csv and light-colours.csv have them.
TEST_CASE("silver and stone do not fade") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "silver");
  small.see(piece, small.material, "red jasper");
  CHECK(of(small, piece).light_class == LightClass::none);
}

TEST_CASE("the cord decides, not the silver above it") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "silver");
  small.see(piece, small.cord, "braided rayon");
  small.see(piece, small.colour, "black");
  const auto found = of(small, piece);
  CHECK(found.light_class == LightClass::medium);
  CHECK(found.part == "cord");
  CHECK(found.step == 4);
  CHECK_FALSE(found.counted);
}

TEST_CASE("a bright dye is quicker than the cord it is in") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "silver");
  small.see(piece, small.cord, "plaited leather");
  small.see(piece, small.colour, "red");
  CHECK(of(small, piece).light_class == LightClass::high);
}

TEST_CASE("tan leather is as undyed leather") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "silver");
  small.see(piece, small.cord, "plaited leather");
  small.see(piece, small.colour, "tan");
  const auto found = of(small, piece);
  CHECK(found.light_class == LightClass::low);
  CHECK(found.step == 7);
}

TEST_CASE("a colour that nobody recorded counts as high, and says so") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "silver");
  small.see(piece, small.cord, "cotton braid");
  const auto found = of(small, piece);
  CHECK(found.light_class == LightClass::high);
  CHECK(found.counted);
  CHECK(found.why.find("nobody recorded") != std::string::npos);
}

TEST_CASE("the colour of a stone is no dye") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "blue glass");
  CHECK(of(small, piece).light_class == LightClass::none);
}

TEST_CASE("a cord of which nothing is said counts as high; one that is not there does not") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "silver");
  small.add(model::Part{.piece = piece, .kind = small.show.pool.take("cord")});
  CHECK(of(small, piece).counted);
  SmallShow bare;
  const auto without = bare.add_piece("A 2", "silver");
  bare.add(model::Part{.piece = without, .kind = bare.show.pool.take("cord")});
  bare.add(
      model::Observation{.piece = without, .character = bare.cord, .seen = model::Seen::none});
  CHECK(of(bare, without).light_class == LightClass::none);
}

TEST_CASE("a piece of which nothing is said counts as high") {
  SmallShow small;
  const auto piece = small.add_piece("A 1");
  small.see(piece, small.motif, "feather");  // a picture of one
  const auto found = of(small, piece);
  CHECK(found.light_class == LightClass::high);
  CHECK(found.counted);
}

TEST_CASE("a class that the lender names stands over the record") {
  SmallShow small;
  const auto piece = small.add_piece("A 1", "silver");
  const model::Show& show = small.settled();
  const model::Requirement said{.lender = {9}, .light_class = "R3"};
  CHECK(most_sensitive(show, *show.find(piece), &said).light_class == LightClass::high);
}
