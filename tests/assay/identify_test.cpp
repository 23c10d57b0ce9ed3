#include "assay/identify.h"

#include <algorithm>
#include <doctest/doctest.h>

#include "assay/alloy.h"

using namespace backmark;
using namespace backmark::assay;

namespace {

double chance(const Identified& found, const std::string& material) {
  for (const Candidate& one : found.candidates) {
    if (one.material == material) {
      return one.p;
    }
  }
  return 0;
}

bool excluded(const Identified& found, const std::string& material) {
  return std::any_of(found.excluded.begin(), found.excluded.end(),
                     [&](const Excluded& one) { return one.material == material; });
}

}  // namespace

// Ranges of index as the GIA Gem Reference Guide gives them (secondary): turquoise 1.61-1.65,
// howlite to 1.605, magnesite 1.509-1.72, variscite to 1.59, lapis to 1.55; a spot is good to
// 0.01.
TEST_CASE(
    "a spot of 1.61 keeps turquoise and magnesite, rules variscite and lapis out, flags "
    "howlite") {
  const auto found = identify({.spot_index = 1.61});
  REQUIRE(found);
  CHECK(chance(*found, "turquoise") > 0.01);
  CHECK(chance(*found, "magnesite") > 0.001);
  CHECK(excluded(*found, "variscite"));
  CHECK(excluded(*found, "lapis lazuli"));
  const auto howlite =
      std::find_if(found->candidates.begin(), found->candidates.end(),
                   [](const Candidate& one) { return one.material == "howlite"; });
  REQUIRE(howlite != found->candidates.end());
  CHECK(!howlite->borderline.empty());
}

TEST_CASE("a density of sterling leaves sterling first and rules nickel silver out") {
  const auto found = identify({.density = Density{10.357, 0.012}});
  REQUIRE(found);
  CHECK(found->candidates.front().material == "silver 925");
  CHECK(excluded(*found, "nickel silver"));
  CHECK(excluded(*found, "turquoise"));
}

// Espinoza and Mann 1993: over 115 degrees elephant, under 90 mammoth, between them open for
// single angles.
TEST_CASE(
    "a mean of ten outer angles tells elephant from mammoth; one angle between leaves both") {
  const auto elephant = identify({.seen = {"schreger lines"}, .angle = 128, .angles = 10});
  REQUIRE(elephant);
  CHECK(chance(*elephant, "elephant ivory") > 0.95);
  const auto mammoth = identify({.seen = {"schreger lines"}, .angle = 75, .angles = 10});
  REQUIRE(mammoth);
  CHECK(chance(*mammoth, "mammoth ivory") > 0.95);
  const auto open = identify({.seen = {"schreger lines"}, .angle = 105});
  REQUIRE(open);
  CHECK(chance(*open, "elephant ivory") < 0.7);
  CHECK(chance(*open, "mammoth ivory") > 0.3);
  REQUIRE(!open->notes.empty());
  CHECK(open->notes.front().find("decides little") != std::string::npos);
}

TEST_CASE("no single test counts for more than its cap") {
  const auto before = identify({.density = Density{1.31, 0.02}});
  const auto after = identify({.density = Density{1.31, 0.02}, .seen = {"spherical dots"}});
  REQUIRE(before);
  REQUIRE(after);
  CHECK(chance(*after, "tortoiseshell") > 0.5);
  const double odds_before = chance(*before, "tortoiseshell") / chance(*before, "horn");
  const double odds_after = chance(*after, "tortoiseshell") / chance(*after, "horn");
  CHECK(odds_after / odds_before < 200.001);
}

TEST_CASE("chances sum to one and better evidence never lowers the truth's share") {
  const auto loose = identify({.density = Density{2.65, 0.05}});
  const auto tight = identify({.density = Density{2.65, 0.005}, .spot_index = 1.55});
  REQUIRE(loose);
  REQUIRE(tight);
  double sum = 0;
  for (const Candidate& one : tight->candidates) {
    sum += one.p;
  }
  CHECK(sum == doctest::Approx(1).epsilon(0.01));
  CHECK(chance(*tight, "quartz") > chance(*loose, "quartz"));
}

TEST_CASE("what may be porous is not to be wetted, and nothing destructive is proposed") {
  const auto found = identify({.uv_long = "weak", .group = "organic"});
  REQUIRE(found);
  REQUIRE(!found->next.empty());
  CHECK(found->next.front().allowed);
  for (const NextTest& one : found->next) {
    CHECK(one.gain_bits > 0);
    CHECK(one.minutes > 0);
    if (one.test == "air_g and water_g" || one.test == "spot_ri") {
      CHECK(!one.allowed);
      CHECK(one.harm.rfind("not to be done", 0) == 0);
    }
  }
  CHECK(std::find(never().begin(), never().end(), "hot needle") != never().end());
}

TEST_CASE("readings that no material of the table has are refused with what to think of") {
  const auto none = identify({.density = Density{30, 0.1}});
  REQUIRE(!none);
  CHECK(none.problem().fault == Fault::refused);
  CHECK(none.problem().fix.find("set, hollow") != std::string::npos);
  const auto over = identify({.spot_index = 1.85});
  REQUIRE(!over);
  CHECK(over.problem().fix == "above the limit write spot_ri=over");
  CHECK(!identify({.seen = {"bubblez"}}));
}

TEST_CASE("a whole of two materials gives an interval of the denser part and names nothing") {
  const auto share = denser_share_between(6.50, {2.45, 2.80}, 10.36);
  REQUIRE(share);
  CHECK(share->first == doctest::Approx(0.7801).epsilon(0.0005));
  CHECK(share->second == doctest::Approx(0.8161).epsilon(0.0005));
  const auto above = denser_share(10.80, 2.50, 10.36);
  REQUIRE(!above);
  CHECK(above.problem().what.find("cannot be made of parts") != std::string::npos);
}

TEST_CASE("no alloy of silver and copper is as light as nickel silver") {
  const auto fineness = silver_fineness(8.70, 0.02);
  REQUIRE(!fineness);
  CHECK(fineness.problem().fix.find("nickel silver") != std::string::npos);
}

TEST_CASE("a thing that floats, weights that are none, and hot water are refused") {
  CHECK(!density_of({Grams{3}, Grams{3.1}}));
  CHECK(!density_of({Grams{0}, Grams{0}}));
  const auto hot = density_of({Grams{3}, Grams{1}, Celsius{41}});
  REQUIRE(!hot);
  CHECK(hot.problem().what == "water at 41 degrees C is outside 0 to 40 degrees C");
}
