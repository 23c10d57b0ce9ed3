#include "base/date_text.h"

#include <algorithm>
#include <cstdlib>
#include <doctest/doctest.h>

#include "base/json.h"
#include "base/named_period.h"
#include "base/text.h"
#include "table_file.h"

using namespace backmark;

namespace {

struct Row {
  std::string text, earliest, latest, left_over;
};

struct Score {
  int rows = 0;
  int exact = 0;
  int near = 0;     // both ends within 5 years
  int rounded = 0;  // both ends within 25 years: the rounding of "early", "late" and the like
  int held = 0;     // wider off, but the stated years all lie within the reading
  int misread = 0;  // no year in common with what the museum states
  int unread = 0;
};

std::size_t column(const std::vector<std::string>& head, std::string_view name) {
  return static_cast<std::size_t>(std::find(head.begin(), head.end(), name) - head.begin());
}

// The tables number years without a year 0: -1 is 1 BCE.
long astronomical(long year) {
  return year < 0 ? year + 1 : year;
}

void add(Score& score, const DateReading& reading, long from, long to) {
  ++score.rows;
  if (!reading.bounds.earliest && !reading.bounds.latest) {
    ++score.unread;
    return;
  }
  const long first = reading.bounds.earliest ? reading.bounds.earliest->value : from;
  const long last = reading.bounds.latest ? reading.bounds.latest->value : to;
  const long worst = std::max(std::labs(first - from), std::labs(last - to));
  if (worst == 0) {
    ++score.exact;
  } else if (worst <= 5) {
    ++score.near;
  } else if (worst <= 25) {
    ++score.rounded;
  } else if (first <= from + 5 && to <= last + 5) {
    ++score.held;
  } else if (last < from || first > to) {
    ++score.misread;
  }
}

Score score_table(const std::string& file,
                  std::string_view text,
                  std::string_view from,
                  std::string_view to) {
  const auto rows = read_table(Path(BACKMARK_SHARED_DIR) / "data" / file);
  Score score;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const auto& row = rows[i];
    const auto first = to_whole(row.at(column(rows[0], from)));
    const auto last = to_whole(row.at(column(rows[0], to)));
    const std::string& cell = row.at(column(rows[0], text));
    if (first && last && !cell.empty()) {
      add(score, read_date_text(cell), astronomical(*first), astronomical(*last));
    }
  }
  return score;
}

}  // namespace

TEST_CASE("catalogue dates are read as their cataloguers meant them") {
  const std::vector<Row> rows = {
      {"c. 1860", "1855-01-01", "1865-12-31", ""},
      {"1950~", "1950-01-01", "1950-12-31", ""},
      {"second half of the 19th century", "1850-01-01", "1899-12-31", ""},
      {"1950s", "1950-01-01", "1959-12-31", ""},
      {"1880's", "1880-01-01", "1889-12-31", ""},
      {"about 1916-1920, by 1931", "1911-01-01", "1925-12-31", ""},
      {"before 1972", "-inf", "1971-12-31", ""},
      {"by 1972", "-inf", "1972-12-31", ""},
      {"after 1863", "1864-01-01", "+inf", ""},
      {"26th Dynasty (664-525 BCE)", "-0663-01-01", "-0524-12-31", ""},
      {"3/1/1832", "1832-01-01", "1832-12-31", ""},
      {"1843-1835", "1835-01-01", "1843-12-31", ""},
      {"1885-90", "1885-01-01", "1890-12-31", ""},
      {"1830\xE2\x80\x93"
       "1860",
       "1830-01-01", "1860-12-31", ""},
      {"n.d.", "unknown", "unknown", ""},
      {"1800s", "1800-01-01", "1899-12-31", ""},
      {"19-20C.", "1800-01-01", "1999-12-31", ""},
      {"20th Century/1ST QUARTER", "1900-01-01", "1924-12-31", ""},
      {"C1st-2nd AD", "0001-01-01", "0199-12-31", ""},
      {"C2nd BC", "-0199-01-01", "-0100-12-31", ""},
      {"50 BC-AD 50", "-0049-01-01", "0050-12-31", ""},
      {"5th-4th century BCE", "-0499-01-01", "-0300-12-31", ""},
      {"BC 4500", "-4499-01-01", "-4499-12-31", ""},
      {"mid-18th to mid-19th century", "1725-01-01", "1875-12-31", ""},
      {"designed 1944, manufactured 1999", "1999-01-01", "1999-12-31", ""},
      {"1984 (designed) 1985 (manufactured)", "1985-01-01", "1985-12-31", ""},
      {"1810-1812, 1818", "1810-01-01", "1818-12-31", ""},
      {"Ming Dynasty, 1368-1644, 16th century", "1500-01-01", "1599-12-31", ""},
      {"casted November 20, 1916", "1916-01-01", "1916-12-31", ""},
      {"1955-8", "1955-01-01", "1958-12-31", ""},
      {"1950s-60s", "1950-01-01", "1969-12-31", ""},
      {"1955 (repaired 1980)", "1955-01-01", "1955-12-31", ""},
      {"restored 1980", "-inf", "1980-12-31", ""},
      {"um 1955", "1950-01-01", "1960-12-31", ""},
      {"1950er Jahre", "1950-01-01", "1959-12-31", ""},
      {"1950-ish", "1945-01-01", "1955-12-31", ""},
      {"1955/2", "1955-01-01", "1955-12-31", "2"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const DateReading reading = read_date_text(row.text);
    CHECK(reading.understood);
    CHECK(reading.earliest == row.earliest);
    CHECK(reading.latest == row.latest);
    CHECK(reading.left_over == row.left_over);
  }
}

TEST_CASE("what cannot be read is kept and said, never guessed") {
  for (const char* text : {"195?-ish", "long ago", "9-24", "12.5", "50s", "early 50s", "A1955",
                           "1955b", "77th Dynasty", "Neolithic", "Louis XV style", "Ming vase",
                           "", "----", "99999999999999999999"}) {
    CAPTURE(text);
    const DateReading reading = read_date_text(text);
    CHECK_FALSE(reading.understood);
    CHECK(reading.earliest == "unknown");
    CHECK(reading.edtf.empty());
    CHECK((reading.text.empty() || !reading.left_over.empty()));
  }
}

TEST_CASE("periods with a name are read by the table of periods") {
  // Bounds: reference/periods.csv, which names a source beside each row.
  const std::vector<Row> rows = {
      {"Meiji period", "1868-01-01", "1912-12-31", ""},
      {"Edo", "1615-01-01", "1868-12-31", ""},
      {"Victorian", "1837-01-01", "1901-12-31", ""},
      {"26th Dynasty", "-0663-01-01", "-0524-12-31", ""},
      {"Dynasty XVIII", "-1549-01-01", "-1294-12-31", ""},
      {"18th-19th Dynasty", "-1549-01-01", "-1185-12-31", ""},
      {"Twenty-third Dynasty", "-0817-01-01", "-0714-12-31", ""},
      {"Qing dynasty, Kangxi", "1662-01-01", "1722-12-31", ""},
      {"Ch'ing dynasty", "1644-01-01", "1911-12-31", ""},
      {"late Qing?", "1778-01-01", "1911-12-31", ""},
      {"Edo to Meiji", "1615-01-01", "1912-12-31", ""},
      {"Meiji-Taisho", "1868-01-01", "1926-12-31", ""},
      {"Classical/Hellenistic", "-0478-01-01", "-0029-12-31", ""},
      {"George III, c. 1780", "1775-01-01", "1785-12-31", ""},
      {"Victorian, 1950", "1950-01-01", "1950-12-31", "Victorian"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const DateReading reading = read_date_text(row.text);
    CHECK(reading.earliest == row.earliest);
    CHECK(reading.latest == row.latest);
    CHECK(reading.left_over == row.left_over);
  }
}

TEST_CASE("every row of the table of periods is whole and has a source") {
  CHECK(named_periods().size() > 100);
  for (const NamedPeriod& period : named_periods()) {
    CAPTURE(period.names.front());
    CHECK(period.years.first < period.years.last);
    CHECK_FALSE(period.source.empty());
    CHECK_FALSE(period.status.empty());
    CHECK(read_date_text(period.names.front() + " period").bounds.earliest ==
          period.years.first);
  }
}

TEST_CASE("slips, lost dashes and unsaid eras do not hide a century") {
  const std::vector<Row> rows = {
      {"ealy C 4th AD", "0300-01-01", "0325-12-31", ""},
      {"late C6th- early 5th", "-0524-01-01", "-0474-12-31", ""},
      {"C3rd C1st BC", "-0299-01-01", "0000-12-31", ""},
      {"end C1st BC- beginning AD", "-0024-01-01", "0025-12-31", ""},
      {"80 BC or a little later", "-0079-01-01", "+inf", ""},
      {"1775 or before", "-inf", "1775-12-31", ""},
      {"in or after 1863", "1863-01-01", "+inf", ""},
      {"nineteenth century", "1800-01-01", "1899-12-31", ""},
      {"c. second half of the 19th century", "1850-01-01", "1899-12-31", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const DateReading reading = read_date_text(row.text);
    CHECK(reading.earliest == row.earliest);
    CHECK(reading.latest == row.latest);
    CHECK(reading.left_over == row.left_over);
  }
  CHECK_FALSE(read_date_text("nearly").understood);
}

TEST_CASE("doubt is kept beside the years, not in them") {
  const DateReading reading = read_date_text("possibly c. 1885?");
  CHECK(reading.doubtful);
  CHECK(reading.approximate);
  CHECK(reading.earliest == "1880-01-01");
}

TEST_CASE("about and doubt are marks in EDTF, which widening is not") {
  CHECK(read_date_text("c. 1860").edtf == "1860~");
  CHECK(read_date_text("c. 1925-1940").edtf == "1925~/1940~");
  CHECK(read_date_text("1950s").edtf == "195X");
  CHECK(read_date_text("19th century?").edtf == "18XX?");
  CHECK(read_date_text("possibly c. 1885").edtf == "1885%");
  CHECK(read_date_text("before 1938").edtf == "../1937");
}

TEST_CASE("two figures after a year are the end of a range, not a season") {
  CHECK(read_date_text("1920-30").edtf == "1920/1930");
  CHECK(read_date_text("1921-24").latest == "1924-12-31");
  CHECK(read_date_text("1950-25").earliest == "1950-03-01");  // spring 1950, as EDTF says
  CHECK(read_date_text("1907-11").latest == "1907-11-30");
}

TEST_CASE("a design alone says only that the piece is not older") {
  CHECK(read_date_text("pattern introduced 1905").edtf == "1905/..");
  CHECK(read_date_text("designed 1905, made 1910").edtf == "1910");
}

TEST_CASE("the number of a patent is no year") {
  const DateReading reading = read_date_text("1960, Design Patent 191,300, 1961");
  CHECK(reading.edtf == "1960");  // 1961 is the year of the design patent
  CHECK(reading.left_over == "Patent 191,300");
}

TEST_CASE("habits are settings") {
  CHECK(read_date_text("c. 1860", {.about = 10}).earliest == "1850-01-01");
  CHECK(read_date_text("designed 1944, made 1999", {.made_over_design = false}).earliest ==
        "1944-01-01");
}

TEST_CASE("the reading in JSON has the promised keys") {
  const Json json = to_json(read_date_text("before 1938"));
  CHECK(json.dump() ==
        R"({"text":"before 1938","understood":true,"earliest":"-inf","latest":"1937-12-31",)"
        R"("edtf":"../1937","left_over":""})");
}

TEST_CASE("a museum's own years are met by its own words") {
  // Carnegie Museum of Art, open collection records (CC0), the half that is shared.
  const Score score =
      score_table("carnegie-decorative/objects.csv", "date_text", "year_from", "year_to");
  if (score.rows == 0) {
    MESSAGE("skipped: the museum records are not beside this checkout");
    return;
  }
  MESSAGE("rows ", score.rows, " exact ", score.exact, " within 5 years ", score.near,
          " within the rounding of early and late ", score.rounded,
          " holding the stated years ", score.held, " misread ", score.misread, " unread ",
          score.unread);
  CHECK(score.rows > 2600);
  CHECK(score.exact + score.near + score.rounded >= 0.97 * score.rows);
  CHECK(score.misread < 0.005 * score.rows);
}

TEST_CASE("dates of ancient wrecks are met within the rounding of their centuries") {
  // J. Strauss (2013), Shipwrecks Database, Oxford Roman Economy Project. Its compiler often
  // narrowed or widened a century by knowledge that the text does not hold, so less is asked.
  const Score score =
      score_table("date-strings/wreck-dates.csv", "dating", "date_early", "date_late");
  if (score.rows == 0) {
    MESSAGE("skipped: the wreck dates are not beside this checkout");
    return;
  }
  MESSAGE("rows ", score.rows, " exact ", score.exact, " within 5 years ", score.near,
          " within 25 ", score.rounded, " holding the stated years ", score.held, " misread ",
          score.misread, " unread ", score.unread);
  CHECK(score.exact + score.near + score.rounded >= 0.75 * score.rows);
  CHECK(score.exact + score.near + score.rounded + score.held >= 0.93 * score.rows);
  // Five rows contradict their own words ("C10th AD" with 1000 to 1100).
  CHECK(score.misread <= 5);
}
