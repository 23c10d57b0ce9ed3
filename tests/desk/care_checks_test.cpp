#include "desk/care_checks.h"

#include <doctest/doctest.h>

using namespace backmark;
using desk::CareState;

namespace {

// A piece of class R3 in a case: 50 lux and 15,000 lux hours a year (CIE 157:2004, table 4).
struct Lit {
  model::Case in{.key = "wall", .hours_per_day = 8};
  care::CaseContents contents{.in = &in};
  care::LightWish wish{.rule = "CIE 157", .days = 142};

  care::PieceLight at(double lux) {
    care::PieceLight light;
    light.contents = &contents;
    light.light.lux = Lux{lux};
    light.light.from = "measured in the case";
    light.may.level = Lux{50};
    light.may.level_from = "CIE 157 R3";
    light.may.run = LuxHours{15000};
    light.may.run_from = "CIE 157 R3";
    light.dose = LuxHours{lux * 8 * wish.days};
    light.share_of_run = light.dose->value / 15000;
    return light;
  }
};

}  // namespace

TEST_CASE("light within its budget holds, near its end is near, past it is broken") {
  Lit lit;
  CHECK(desk::light_check(lit.at(5), lit.wish).state == CareState::holds);
  CHECK(desk::light_check(lit.at(12), lit.wish).state == CareState::near);
  CHECK(desk::light_check(lit.at(14), lit.wish).state == CareState::broken);
}

TEST_CASE("too much light says for how many days, or how far to turn it down") {
  Lit lit;
  // By hand: 15000 / (48 x 8) = 39.06 days; 15000 / 54528 = 27.5 of 100, rounded down.
  const auto check = desk::light_check(lit.at(48), lit.wish);
  CHECK(check.words ==
        "It reaches 364 of 100 by the last day. Show it for 39 of the 142 days, or turn the "
        "light down to 27 of 100.");
  REQUIRE(check.share);
  CHECK(*check.share == doctest::Approx(3.6352));
}

TEST_CASE("a level above the limit is broken, however short the run") {
  Lit lit;
  lit.wish.days = 1;
  const auto check = desk::light_check(lit.at(64), lit.wish);
  CHECK(check.state == CareState::broken);
  CHECK(check.words.find("from 64 to 50 lux") != std::string::npos);
}

TEST_CASE("what was not measured is asked for and never counted as no light") {
  Lit lit;
  care::PieceLight light = lit.at(48);
  light.dose.reset();
  light.share_of_run.reset();
  light.ask = {"the level: no reading, no fixture"};
  const auto check = desk::light_check(light, lit.wish);
  CHECK(check.state == CareState::ask);
  CHECK_FALSE(check.share);
  CHECK(check.words.find("no reading") != std::string::npos);
}

TEST_CASE("light had in the year before leaves nothing, and says to let it rest") {
  Lit lit;
  care::PieceLight light = lit.at(48);
  light.may.run = LuxHours{0};
  light.share_of_run = 1e9;
  const auto check = desk::light_check(light, lit.wish);
  CHECK(check.state == CareState::broken);
  CHECK(check.words.find("let it rest") != std::string::npos);
}

TEST_CASE("ends of a range are said as far as they are known") {
  CHECK(desk::range_words(40.0, 55.0, "%") == "40 to 55 %");
  CHECK(desk::range_words(40.0, std::nullopt, "%") == "at least 40 %");
  CHECK(desk::range_words(std::nullopt, 50.0, "%") == "at most 50 %");
  CHECK(desk::range_words(std::nullopt, std::nullopt, "degrees") == "any degrees");
}
