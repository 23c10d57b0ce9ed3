#include "base/edtf_years.h"

#include <doctest/doctest.h>
#include <limits>

using namespace backmark;

TEST_CASE("whole years of an expression, with open ends left open") {
  CHECK(year_bounds(*parse_edtf("1947-06/1962")) == YearBounds{Year{1947}, Year{1962}});
  CHECK(year_bounds(*parse_edtf("../1937")) == YearBounds{std::nullopt, Year{1937}});
  CHECK(year_bounds(*parse_edtf("1947/")) == YearBounds{Year{1947}, std::nullopt});
  CHECK_FALSE(year_bounds(*parse_edtf("1947/")).span().has_value());
  CHECK(year_bounds(*parse_edtf("195X")).span()->length() == 10);
  CHECK(year_bounds(*parse_edtf("../1937")).allows({1}));
  CHECK_FALSE(year_bounds(*parse_edtf("../1937")).allows({1938}));
}

TEST_CASE("a year beyond 32 bits becomes the outermost year") {
  CHECK(year_bounds(*parse_edtf("Y-17E15")).earliest->value ==
        std::numeric_limits<std::int32_t>::min());
}

TEST_CASE("bounds are written as the shortest expression") {
  CHECK(write_edtf({Year{1950}, Year{1950}}) == "1950");
  CHECK(write_edtf({Year{1950}, Year{1950}}, true) == "1950~");
  CHECK(write_edtf({Year{1950}, Year{1959}}) == "195X");
  CHECK(write_edtf({Year{1800}, Year{1899}}) == "18XX");
  CHECK(write_edtf({Year{0}, Year{99}}) == "00XX");
  CHECK(write_edtf({Year{1940}, Year{1950}}, true) == "1940~/1950~");
  CHECK(write_edtf({std::nullopt, Year{1937}}) == "../1937");
  CHECK(write_edtf({Year{1947}, std::nullopt}) == "1947/..");
  CHECK(write_edtf({Year{-663}, Year{-524}}) == "-0663/-0524");
  CHECK(write_edtf({Year{1962}, Year{1947}}) == "1947/1962");
  CHECK(write_edtf({}).empty());
}

TEST_CASE("what is written is read back with the same years") {
  for (const int first :
       {-170000000, -12000, -9999, -664, -1, 0, 1, 45, 1900, 1950, 9999, 10000}) {
    for (const int length : {1, 2, 10, 100, 1000}) {
      const YearBounds bounds{Year{first}, Year{first + length - 1}};
      const std::string text = write_edtf(bounds);
      CAPTURE(text);
      const auto edtf = parse_edtf(text);
      REQUIRE(edtf.ok());
      CHECK(year_bounds(*edtf) == bounds);
    }
  }
}
