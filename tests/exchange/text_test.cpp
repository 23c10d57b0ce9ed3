// Cells in words: makers and measures.
#include "base/text.h"

#include <doctest/doctest.h>

#include "exchange/maker_text.h"
#include "exchange/measure_text.h"

using namespace backmark;
using namespace backmark::exchange;

namespace {

NamedMaker one(std::string_view cell) {
  const auto makers = read_makers(cell);
  REQUIRE(makers.size() == 1);
  return makers.front();
}

// "height 222.25 mm, ..." for comparing.
std::string sizes(std::string_view cell, const MeasureHabits& habits = {.unit = "in"}) {
  std::vector<std::string> texts;
  for (const Measure& measure : read_measures(cell, habits).measures) {
    texts.push_back(fmt::format("{} {:.6g} {}", measure.key, measure.value, measure.unit));
  }
  return join(texts, ", ");
}

}  // namespace

TEST_CASE("a qualifier goes before the name and stays with it") {
  CHECK(one("Oda Vessen").qualifier.empty());
  CHECK(one("attributed to Oda Vessen").name == "Oda Vessen");
  CHECK(one("attributed to Oda Vessen").qualifier == "attributed to");
  CHECK(one("Oda Vessen?").qualifier == "possibly by");
  CHECK(one("Workshop of Oda Vessen").qualifier == "workshop of");
  CHECK(one("Oda Vessen (attributed)").qualifier == "attributed to");
}

TEST_CASE("signs without a letter name nobody") {
  for (const char* cell : {"", "?", "--", "n. 12?"}) {
    CAPTURE(cell);
    CHECK(read_makers(cell).empty() == (std::string_view(cell) != "n. 12?"));
  }
}

TEST_CASE("possibly by one or another names both") {
  const auto makers = read_makers("possibly by Oda Vessen, or Ilm Tarrow");
  REQUIRE(makers.size() == 2);
  CHECK(makers[0].name == "Oda Vessen");
  CHECK(makers[1].name == "Ilm Tarrow");
  CHECK(makers[1].qualifier == "possibly by");
  CHECK(one("Tom or Son Ltd").name == "Tom or Son Ltd");
}

TEST_CASE("an unknown hand with a nation is a place") {
  CHECK(one("unknown Austrian").name.empty());
  CHECK(one("unknown Austrian").place == "Austrian");
  CHECK(one("unknown Italian, Naples").place == "Italian, Naples");
  CHECK(one("Unknown").place.empty());
  CHECK(read_makers("  ").empty());
}

TEST_CASE("a role in step may carry the qualifier") {
  NamedMaker maker = one("Oda Vessen");
  apply_role("attributed manufacturer", maker);
  CHECK(maker.qualifier == "attributed to");
  CHECK(maker.role == "manufacturer");
  NamedMaker other = one("Oda Vessen");
  apply_role("Possibly by", other);
  CHECK(other.qualifier == "possibly by");
  CHECK(other.role.empty());
}

TEST_CASE("family name first is turned round, a firm's ending is not") {
  CHECK(natural_order("Vessen, Oda") == "Oda Vessen");
  CHECK(natural_order("Kensington, Inc.") == "Kensington, Inc.");
  CHECK(inverted_order("Oda Vessen") == "Vessen, Oda");
}

// 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
TEST_CASE("measures come out in millimetres and grams") {
  CHECK(sizes("L: 8 3/4 in.") == "length 222.25 mm");
  CHECK(sizes("5.875", {.unit = "in", .order = {"width"}}) == "width 149.225 mm");
  CHECK(sizes("12,5 cm", {.unit = "mm", .decimal = ','}) == "height 125 mm");
  CHECK(sizes("H: 3 7/16 in. x W: 2 in.") == "height 87.3125 mm, width 50.8 mm");
  CHECK(sizes("4 5/16' diam.") == "diameter 109.537 mm");
  CHECK(sizes("6 1/2 H") == "height 165.1 mm");
  CHECK(sizes("2 3/4 l |  7/8 w") == "length 69.85 mm, width 22.225 mm");
  CHECK(sizes("8 1/2 x 1 x 1/2 in.") == "height 215.9 mm, width 25.4 mm, depth 12.7 mm");
  CHECK(sizes("3 \xC2\xBD in.") == "height 88.9 mm");
  CHECK(sizes("Wt: 12 g") == "weight 12 g");
}

TEST_CASE("the same in a second unit agrees, another part is left over") {
  const auto both = read_measures("17 x 14 in. |  43.2 x 35.6 cm.", {.unit = "in"});
  CHECK(both.left_over.empty());
  CHECK(both.measures.size() == 2);
  const auto parts =
      read_measures("A) fork: L: 9 7/8 in.\nB) knife: L: 6 1/4 in.", {.unit = "in"});
  REQUIRE(parts.measures.size() == 1);
  CHECK(parts.measures[0].value == doctest::Approx(250.825));
  CHECK(contains(parts.left_over, "B) knife"));
}

TEST_CASE("a comma before three digits is asked about") {
  CHECK(read_measures("1,250", {.unit = "mm", .decimal = 0}).ambiguous);
  CHECK_FALSE(read_measures("1,25", {.unit = "mm", .decimal = 0}).ambiguous);
  CHECK(sizes("1,250", {.unit = "mm", .decimal = '.'}) == "height 1250 mm");
}

TEST_CASE("what is no measure is left over, never guessed") {
  CHECK(read_measures("irregular", {.unit = "in"}).left_over == "irregular");
  CHECK(sizes("9 12/ in.").empty());
  CHECK(read_measures("", {.unit = "in"}).measures.empty());
}
