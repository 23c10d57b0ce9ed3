#include "reference/display.h"

#include <doctest/doctest.h>

using namespace backmark::reference;

TEST_CASE("the band of a value is that of its longest word") {
  CHECK(climate_band("plaited leather")->band == "leather and hide");
  CHECK(climate_band("mussel shell")->band == "shell coral and pearl");
  CHECK(climate_band("unheard-of") == nullptr);
}

// Bizot Green Protocol, 2023: 40 to 60 % and 16 to 25 degrees.
TEST_CASE("hygroscopic things want 40 to 60 per cent and 16 to 25 degrees") {
  for (const char* value : {"leather", "ivory", "driftwood", "braided cotton"}) {
    const ClimateBand* band = climate_band(value);
    REQUIRE(band != nullptr);
    CHECK(*band->rh_low == 40);
    CHECK(*band->rh_high == 60);
    CHECK(*band->c_low == 16);
    CHECK(*band->c_high == 25);
  }
}

TEST_CASE("every band has an end and every end is in order") {
  for (const ClimateBand& band : climate_bands()) {
    CHECK((band.rh_low || band.rh_high));
    CHECK((!band.rh_low || !band.rh_high || *band.rh_low < *band.rh_high));
  }
}

TEST_CASE("wool felt is kept from silver and glass is welcome") {
  CHECK(case_material("grey wool felt")->verdict == "avoid");
  CHECK(case_material("Float glass")->verdict == "preferred");
  CHECK(case_material("moon cheese") == nullptr);
}

TEST_CASE("a shelf is as stiff as the lower end of what is printed") {
  CHECK(shelf_material("Toughened glass")->stiffness_gpa == 70);
  CHECK(shelf_material("acrylic sheet")->stiffness_gpa == 2.24);  // Callister: 2.24 to 3.24
  CHECK(*shelf_material("acrylic")->stress_limit_mpa == 10.4);
}
