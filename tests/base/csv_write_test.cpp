#include "base/csv_write.h"

#include <doctest/doctest.h>

using namespace backmark;

namespace {

std::string row(const std::vector<std::string>& cells, const CsvForm& form = {}) {
  std::string out;
  append_csv_row(out, cells, form);
  return out;
}

}  // namespace

// RFC 4180, section 2, rules 1 and 5 to 7.
TEST_CASE("cells are quoted as RFC 4180 says, and only those that need it") {
  CHECK(row({"aaa", "b\r\nbb", "ccc"}) == "aaa,\"b\r\nbb\",ccc\r\n");
  CHECK(row({"aaa", "b\"bb", "c,c"}) == "aaa,\"b\"\"bb\",\"c,c\"\r\n");
  CHECK(row({"a b", "", "c;c"}) == "a b,,c;c\r\n");
}

TEST_CASE("another separator changes what needs quotes") {
  CHECK(row({"a,b", "c;d"}, {.separator = ';', .line_end = "\n"}) == "a,b;\"c;d\"\n");
}

TEST_CASE("a row of one empty cell is still a row") {
  CHECK(row({""}) == "\"\"\r\n");
}

TEST_CASE("a guard stands before what a spreadsheet would run, inside the quotes") {
  CHECK(row({"=1,2", "'tis", "plain"}, {.guard_formulas = true}) ==
        "\"'=1,2\",''tis,plain\r\n");
  CHECK(unguarded("'=1") == "=1");
  CHECK(unguarded("plain") == "plain");
}
