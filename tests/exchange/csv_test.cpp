#include "exchange/csv.h"

#include <doctest/doctest.h>

#include "base/csv_write.h"

using namespace backmark;
using namespace backmark::exchange;

namespace {

Table read(std::string_view bytes) {
  const auto table = read_csv(bytes, "list.csv");
  REQUIRE_MESSAGE(table.ok(), (table.ok() ? "" : to_line(table.problem())));
  return *table;
}

}  // namespace

// RFC 4180 section 2, rules 1 to 7, by their own examples.
TEST_CASE("quoted cells hold separators, line breaks and doubled quotes") {
  const Table table = read("aaa,bbb,ccc\r\n\"a \"\"b\"\"\",\"x,y\",\"1\r\n2\"\r\nzzz, yyy,xxx");
  REQUIRE(table.rows.size() == 2);
  CHECK(table.rows[0].cells == Cells{"a \"b\"", "x,y", "1\r\n2"});
  CHECK(table.rows[1].cells == Cells{"zzz", " yyy", "xxx"});
  CHECK(table.rows[1].number == 3);
}

TEST_CASE("the separator is found once for the whole file") {
  CHECK(read("id;size\n1;12,5\n2;3,25\n").headings == Cells{"id", "size"});
  CHECK(read("id\tsize\n1\t2,5\n").headings == Cells{"id", "size"});
  CHECK(read("id,remarks\n1,a;b;c;d\n").headings == Cells{"id", "remarks"});
}

TEST_CASE("the byte order mark is no part of the first heading") {
  CHECK(read("\xEF\xBB\xBFid,title\n1,x\n").headings[0] == "id");
}

TEST_CASE("a file that is not UTF-8 is read as Windows-1252, and that is said") {
  // 0x80 is the euro sign and 0xE9 e-acute (WHATWG Encoding Standard, index windows-1252).
  const Table table = read("id,maker\n1,Caf\xE9 \x80\n");
  CHECK(table.rows[0].cells[1] == "Caf\xC3\xA9 \xE2\x82\xAC");
  CHECK(table.dialect.encoding == Encoding::windows_1252);
  CHECK(table.said[1] ==
        "the text is not UTF-8 and was read as Windows-1252: look at the accents");
}

TEST_CASE("empty rows and columns at the ends are dropped and said") {
  const Table table = read("id,title,,\n1,x,,\n,,,\n\n");
  CHECK(table.headings == Cells{"id", "title"});
  CHECK(table.rows.size() == 1);
  CHECK(table.said[1] == "2 empty rows at the end were left out");
  CHECK(table.said[2] == "2 empty columns at the end were left out");
}

TEST_CASE("a row longer than the headings is a fault and is kept aside") {
  const Table table = read("id,title\n1,a,b\n2,c\n");
  REQUIRE(table.faults.size() == 1);
  CHECK(table.faults[0].row == 2);
  CHECK(table.faults[0].what == "the row has 3 cells and there are 2 headings");
  CHECK(table.misfits.size() == 1);
  CHECK(table.rows.size() == 1);
}

TEST_CASE("a quote that never closes names its row") {
  const auto table = read_csv("id,title\n1,\"open\n2,x\n", "list.csv");
  REQUIRE_FALSE(table.ok());
  CHECK(table.problem().what == "a quoted cell begins here and never ends");
  CHECK(table.problem().where == "list.csv, row 2");
}

TEST_CASE("what is not text says how to save it") {
  CHECK(read_csv(std::string_view("\xFF\xFEi\0d\0", 6), "a.csv").problem().fix ==
        "open it in the spreadsheet and save it as \"CSV UTF-8\"");
  CHECK(read_table("\xD0\xCF\x11\xE0 old", "a.xls").problem().fix ==
        "open it in the spreadsheet and save it as \"CSV UTF-8\" or as .xlsx");
  CHECK(read_csv("", "a.csv").problem().what == "the first row holds no headings");
}

TEST_CASE("what is written reads back the same, in every dialect") {
  const std::vector<Cells> rows{
      {"a,b;c\td", "\"q\"", "line\nbreak"}, {"", " x ", "caf\xC3\xA9"}, {"=1+1", "-5", "'tis"}};
  for (const char separator : {',', ';', '\t'}) {
    for (const std::string& end : {std::string("\r\n"), std::string("\n"), std::string("\r")}) {
      const std::string bytes = write_csv(
          {"h1", "h2", "h3"}, rows,
          {.dialect = {.separator = separator, .line_end = end, .byte_order_mark = true}});
      const Table table = read(bytes);
      REQUIRE(table.rows.size() == rows.size());
      for (std::size_t i = 0; i < rows.size(); ++i) {
        CHECK(table.rows[i].cells == rows[i]);
      }
    }
  }
}

TEST_CASE("a guarded cell runs as no formula and loses its guard again") {
  for (const std::string cell : {"=cmd()", "+1", "-5", "@x", "'tis", "plain"}) {
    const Table table = read(write_csv({"id"}, {{cell}}, {.guard_formulas = true}));
    CHECK(std::string("=+-@").find(table.rows[0].cells[0][0]) == std::string::npos);
    CHECK(unguarded(table.rows[0].cells[0]) == cell);
  }
}
