// Rows of windows: what was in use when, and tables of marks.
#include <doctest/doctest.h>

#include "exchange/export_csv.h"
#include "exchange/import_rows.h"
#include "model/mark_table.h"

using namespace backmark;
using namespace backmark::exchange;
using namespace backmark::model;

namespace {

constexpr std::string_view windows_map = R"(rows = "windows"
source = "marks-of-the-coast"
[columns]
what = "character"
value = "value"
from = "from"
to = "to"
says = "source"
)";
const std::string head = "what,value,from,to,says\n";

std::vector<std::string> faults_of(const std::string& rows) {
  const auto out = import_of(Show(), head + rows, windows_map);
  REQUIRE(out.ok());
  CHECK(out->change.empty());
  std::vector<std::string> lines;
  for (const CellRemark& fault : out->faults) {
    lines.push_back(fault.what);
  }
  return lines;
}

}  // namespace

TEST_CASE("a window says which value was in use, from when, to when, and who says so") {
  Show show;
  const auto out =
      take_rows_of(show,
                   head +
                       "fitting,Spring Clip,1946,1958,\nmark,crowned K,1726,1727,\n"
                       "mark,crowned K,1750,,\n",
                   windows_map);
  CHECK(out.others_new == 3);
  const auto& windows = show.all<Window>();
  REQUIRE(windows.size() == 3);
  const Character* fitting = show.character("fitting");
  REQUIRE(fitting != nullptr);
  CHECK(fitting->shape == Shape::category);
  CHECK(windows[0].character == fitting->id);
  CHECK(show.text(windows[0].value) == "spring clip");
  CHECK(windows[0].from == Year{1946});
  CHECK(windows[0].to == Year{1958});
  CHECK(show.find(windows[0].source)->key == "marks-of-the-coast");
  const Character* mark = show.character(mark_table_key);
  REQUIRE(mark != nullptr);
  CHECK(mark->shape == Shape::text);
  CHECK(show.text(windows[1].value) == "crowned K");
  CHECK(!windows[2].to);
}

TEST_CASE("the same windows twice change nothing; a mended year changes its window") {
  Show show;
  const std::string rows = "mark,c,1818,1819,\nmark,c,1858,1859,\n";
  take_rows_of(show, head + rows, windows_map);
  const auto again = take_rows_of(show, head + rows, windows_map);
  CHECK(again.others_same == 2);
  CHECK(again.others_new == 0);
  const auto mended =
      take_rows_of(show, head + "mark,c,1818,1819,\nmark,c,1858,1860,\n", windows_map);
  CHECK(mended.others_changed == 1);
  REQUIRE(show.all<Window>().size() == 2);
  CHECK(show.all<Window>()[1].to == Year{1860});
}

TEST_CASE("a row of windows that says too little is named with what is missing") {
  CHECK(faults_of(",x,1900,,\n") == std::vector<std::string>{"the row names no character"});
  CHECK(faults_of("mark,,1900,,\n") == std::vector<std::string>{"the row names no value"});
  CHECK(faults_of("mark,c,,,\n") ==
        std::vector<std::string>{"the row gives neither a first nor a last year"});
  CHECK(faults_of("mark,c,1900,1890,\n") ==
        std::vector<std::string>{"the last year, 1890, is before the first, 1900"});
  CHECK(faults_of("mark,c,soon,,\n") == std::vector<std::string>{"\"soon\" is not a year"});
  CHECK(faults_of("mark,c,1900,,nobody\n") ==
        std::vector<std::string>{"there is no source \"nobody\""});
}

TEST_CASE("windows go out as they came in") {
  Show show;
  const std::string rows = "fitting,Spring Clip,1946,1958,\nmark,crowned K,1726,,\n";
  take_rows_of(show, head + rows, windows_map);
  const auto map = read_map(windows_map, "windows.toml");
  REQUIRE(map.ok());
  const CsvExport out = export_rows(show, *map);
  REQUIRE(out.rows.size() == 2);
  CHECK(out.rows[0][1] == "Spring Clip");
  CHECK(out.rows[1][2] == "1726");
}
