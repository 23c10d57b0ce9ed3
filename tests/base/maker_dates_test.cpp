#include "base/maker_dates.h"

#include <algorithm>
#include <doctest/doctest.h>

#include "base/text.h"
#include "table_file.h"

using namespace backmark;

namespace {

struct Row {
  std::string text;
  std::optional<int> born, died, from, to;  // outer years
  std::string left_over;
};

std::optional<int> number(const std::optional<Year>& year) {
  return year ? std::optional<int>(year->value) : std::nullopt;
}

struct Met {
  int rows = 0;
  int met = 0;

  // Whether the stated year lies within the bounds, give or take the year of "after 1770".
  void add(const YearBounds& bounds, const std::optional<long>& year) {
    if (!year || (!bounds.earliest && !bounds.latest)) {
      return;
    }
    ++rows;
    met += (!bounds.earliest || bounds.earliest->value <= *year + 1) &&
                   (!bounds.latest || *year - 1 <= bounds.latest->value)
               ? 1
               : 0;
  }
};

}  // namespace

TEST_CASE("the dates behind a maker's name say birth, death or work") {
  const auto none = std::nullopt;
  const std::vector<Row> rows = {
      {"1902-1977", 1902, 1977, none, none, ""},
      {"1885-90", 1885, 1890, none, none, ""},
      {"b. 1902", 1902, none, none, none, ""},
      {"b. 1902, d. 1977", 1902, 1977, none, none, ""},
      {"d. 1931", none, 1931, none, none, ""},
      {"fl. 1850s", none, none, 1850, 1859, ""},
      {"act. 1890-1910", none, none, 1890, 1910, ""},
      {"active c. 1530 - 1550", none, none, 1525, 1555, ""},
      {"active late 18th century", none, none, 1775, 1799, ""},
      {"c. 1579 - 1646", 1574, 1646, none, none, ""},
      {"1700 - 1775 or after", 1700, none, none, none, ""},
      {"born Oslo, 1860 - 1930", 1860, 1930, none, none, "Oslo"},
      {"Dutch, 1594 - 1680", 1594, 1680, none, none, "Dutch"},
      {"1902-", 1902, none, none, none, ""},
      {"active 1879 - active 1902", none, none, 1879, 1902, ""},
      {"est. 1850 - closed 1902", none, none, 1850, 1902, ""},
      {"1888 - unknown", 1888, none, none, none, ""},
      {"19th century", none, none, 1800, 1899, ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const MakerDates dates = read_maker_dates(row.text);
    CHECK(dates.understood);
    CHECK(number(dates.born.earliest) == row.born);
    CHECK(number(dates.died.latest) == row.died);
    CHECK(number(dates.active.earliest) == row.from);
    CHECK(number(dates.active.latest) == row.to);
    CHECK(dates.left_over == row.left_over);
  }
}

TEST_CASE("a text that dates nobody is left over") {
  for (const char* text : {"", "Norwegian", "living", "b.", "-", "d. unknown"}) {
    CAPTURE(text);
    const MakerDates dates = read_maker_dates(text);
    CHECK_FALSE(dates.understood);
    CHECK_FALSE(working_years(dates).from);
    CHECK_FALSE(working_years(dates).to);
  }
}

TEST_CASE("nobody works from the day of birth") {
  const WorkingYears life = working_years(read_maker_dates("1902-1977"));
  CHECK(life.from == Year{1922});
  CHECK(life.to == Year{1977});
  CHECK(life.from_sd > WorkingYears{}.from_sd);
  const WorkingYears said = working_years(read_maker_dates("1902-1977, active 1930-1955"));
  CHECK(said.from == Year{1930});
  CHECK(said.to == Year{1955});
  const WorkingYears child = working_years(read_maker_dates("1902-1912"));
  CHECK(child.from == Year{1912});
  CHECK(child.to == Year{1912});
}

TEST_CASE("a gallery's own years of its makers are met by its own words") {
  // National Gallery of Art, Washington, open data, constituents (CC0), the half that is
  // shared.
  const auto rows = read_table(Path(BACKMARK_SHARED_DIR) / "data/nga-makers/makers.csv");
  if (rows.empty()) {
    MESSAGE("skipped: the gallery's makers are not beside this checkout");
    return;
  }
  // For "active" makers the gallery states a life by rule of thumb about the words' years; for
  // others the years of birth and death ("after 1770" as 1770).
  int dated = 0, read = 0;
  Met begins, ends, working;
  const auto column = [&](std::string_view name) {
    return static_cast<std::size_t>(std::find(rows[0].begin(), rows[0].end(), name) -
                                    rows[0].begin());
  };
  const std::size_t text = column("date_text"), begin = column("begin_year"),
                    end = column("end_year");
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const std::string& cell = rows[i].at(text);
    if (std::none_of(cell.begin(), cell.end(), [](char c) { return c >= '0' && c <= '9'; })) {
      continue;
    }
    ++dated;
    const MakerDates dates = read_maker_dates(cell);
    read += dates.understood ? 1 : 0;
    const auto first = to_whole(rows[i].at(begin));
    const auto last = to_whole(rows[i].at(end));
    begins.add(dates.born, first);
    ends.add(dates.died, last);
    if (dates.active.earliest && dates.active.latest && first && last && *first <= *last) {
      // Ten years of grace for "c." and for centuries that end in 00.
      ++working.rows;
      working.met += *first - 10 <= dates.active.earliest->value &&
                             dates.active.latest->value <= *last + 10
                         ? 1
                         : 0;
    }
  }
  MESSAGE("texts with a year ", dated, " read ", read, "; births ", begins.rows, " met ",
          begins.met, "; deaths ", ends.rows, " met ", ends.met, "; working years ",
          working.rows, " within the stated life ", working.met);
  CHECK(dated > 6500);
  CHECK(read >= 0.99 * dated);
  CHECK(begins.met >= 0.98 * begins.rows);
  CHECK(ends.met >= 0.98 * ends.rows);
  CHECK(working.met >= 0.95 * working.rows);
}
