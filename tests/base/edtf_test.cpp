#include "base/edtf.h"

#include <doctest/doctest.h>
#include <string>
#include <vector>

#include "base/edtf_years.h"
#include "base/text.h"
#include "table_file.h"

using namespace backmark;

namespace {

std::string marks(DoubtMarks at) {
  return std::string(at.year ? "y" : "") + (at.month ? "m" : "") + (at.day ? "d" : "");
}

std::string kind(EndKind end) {
  return end == EndKind::date ? "date" : end == EndKind::open ? "open" : "unknown";
}

}  // namespace

TEST_CASE("the published examples of the Library of Congress are read as it explains them") {
  // EDTF specification, edition of 4 February 2019: level, first day, last day.
  struct Row {
    std::string text;
    int level;
    std::string earliest, latest;
  };
  const std::vector<Row> rows = {
      {"1985-04-12", 0, "1985-04-12", "1985-04-12"},
      {"1985-04", 0, "1985-04-01", "1985-04-30"},
      {"1964/2008", 0, "1964-01-01", "2008-12-31"},
      {"2004-06-11%", 1, "2004-06-11", "2004-06-11"},
      {"201X", 1, "2010-01-01", "2019-12-31"},
      {"2004-XX", 1, "2004-01-01", "2004-12-31"},
      {"1985-04-12/..", 1, "1985-04-12", "+inf"},
      {"1985/", 1, "1985-01-01", "unknown"},
      {"../1985-04-12", 1, "-inf", "1985-04-12"},
      {"Y170000002", 1, "+170000002-01-01", "+170000002-12-31"},
      {"-1985", 1, "-1985-01-01", "-1985-12-31"},
      {"Y-17E7", 2, "-170000000-01-01", "-170000000-12-31"},
      {"1950S2", 2, "1900-01-01", "1999-12-31"},
      {"[1667,1668,1670..1672]", 2, "1667-01-01", "1672-12-31"},
      {"{1960,1961-12}", 2, "1960-01-01", "1961-12-31"},
      {"156X-12-25", 2, "1560-12-25", "1569-12-25"},
      {"2004-06-~01/2004-06-~20", 2, "2004-06-01", "2004-06-20"},
      // Not published: the same rules on other digits. 1900 was no leap year.
      {"19XX-02-29", 2, "1904-02-29", "1996-02-29"},
      {"-01XX", 1, "-0199-01-01", "-0100-12-31"},
      {"-1985S2", 2, "-1999-01-01", "-1900-12-31"},
      {"2003-24", 1, "2003-12-01", "2004-02-29"},
      {"198X/1985", 2, "1980-01-01", "1985-12-31"},
      {"Y999999999999999999", 1, "+999999999999999999-01-01", "+999999999999999999-12-31"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const auto edtf = parse_edtf(row.text);
    REQUIRE(edtf);
    CHECK(edtf->level == row.level);
    CHECK(earliest_text(*edtf) == row.earliest);
    CHECK(latest_text(*edtf) == row.latest);
    CHECK(edtf->text == row.text);
  }
}

TEST_CASE("what is not EDTF is refused with the way to write it") {
  for (const char* text : {"",
                           " 1985",
                           "85",
                           "19850412",
                           "2001-02-29",
                           "1900-02-29",
                           "1985-13",
                           "1985/1984",
                           "[1667, 1668]",
                           "1985-04-12T24:00:00",
                           "..",
                           "/",
                           "../..",
                           "2004-06-11?x",
                           "Y",
                           "1985-4-1",
                           "[1667",
                           "1964/2008/2010",
                           "1984?~",
                           "Y1985",
                           "1950S5",
                           "1950S0",
                           "Y1E18",
                           "Y1000000000000000000",
                           "-0000",
                           "[]",
                           "[..]",
                           "[1984..1980]",
                           "{1984,..1990}",
                           "[..1667,1635..]",
                           "{1984]",
                           "1985-04-12T-1:00:00",
                           "2004-2X",
                           "1985-04-12-",
                           "??1985",
                           "1985-?",
                           "YE5",
                           "1985-04-12T",
                           "T",
                           "Y20067890-14"}) {
    CAPTURE(text);
    const auto edtf = parse_edtf(text);
    CHECK_FALSE(edtf);
    if (!edtf) {
      CHECK_FALSE(edtf.problem().what.empty());
      CHECK_FALSE(edtf.problem().fix.empty());
    }
  }
}

TEST_CASE("every row of the table of valid dates has its level, days, marks and ends") {
  const auto rows = read_table(Path(BACKMARK_SHARED_DIR) / "standards/edtf-valid.csv");
  if (rows.empty()) {
    MESSAGE("skipped: the table of valid dates is not beside this checkout");
    return;
  }
  std::size_t checked = 0;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const auto& row = rows[i];
    REQUIRE(row.size() >= 10);
    CAPTURE(row[0]);
    const auto edtf = parse_edtf(row[0]);
    REQUIRE(edtf);
    CHECK(std::to_string(edtf->level) == row[1]);
    CHECK(kind(edtf->start.kind) == row[7]);
    CHECK(kind(edtf->end.kind) == row[8]);
    CHECK(earliest_text(*edtf) == row[3]);
    CHECK(latest_text(*edtf) == row[4]);
    if (edtf->form == EdtfForm::date) {
      CHECK(marks(edtf->start.uncertain) == row[5]);
      CHECK(marks(edtf->start.approximate) == row[6]);
    }
    ++checked;
  }
  CHECK(checked == 78);
}

TEST_CASE("every row of the table of invalid dates is refused") {
  const auto rows = read_table(Path(BACKMARK_SHARED_DIR) / "standards/edtf-invalid.csv");
  if (rows.empty()) {
    MESSAGE("skipped: the table of invalid dates is not beside this checkout");
    return;
  }
  for (std::size_t i = 1; i < rows.size(); ++i) {
    CAPTURE(rows[i][0]);
    CHECK_FALSE(parse_edtf(rows[i][0]));
  }
  CHECK(rows.size() == 48);
}

TEST_CASE("whole years go to EDTF and come back the same") {
  for (const int first : {-3000, -43, 0, 1950, 1947}) {
    for (const int length : {1, 10, 16, 100}) {
      const YearBounds bounds{Year{first}, Year{first + length - 1}};
      const auto edtf = parse_edtf(write_edtf(bounds));
      CAPTURE(write_edtf(bounds));
      REQUIRE(edtf);
      CHECK(year_bounds(*edtf) == bounds);
    }
  }
  CHECK(write_edtf({Year{1950}, Year{1959}}) == "195X");
  CHECK(write_edtf({Year{1950}, Year{1950}}, true) == "1950~");
  CHECK(write_edtf({std::nullopt, Year{1937}}) == "../1937");
}

TEST_CASE("a habit of catalogues is refused as EDTF with its rewrite") {
  CHECK(parse_edtf("c. 1950").problem().fix == "write 1950~");
  CHECK(parse_edtf("1950s").problem().fix == "write 195X");
  CHECK(parse_edtf("before 1938").problem().fix == "write ../1937");
  CHECK(parse_edtf("circa 1940-50").problem().fix == "write 1940~/1950~");
}
