#include "exchange/xlsx.h"

#include <doctest/doctest.h>
#include <unistd.h>
#include <xlsxwriter.h>

#include "base/file.h"
#include "base/text.h"

using namespace backmark;
using namespace backmark::exchange;

namespace {

// A workbook of two sheets written by another program's library (libxlsxwriter).
std::string workbook() {
  const std::string path =
      (std::filesystem::temp_directory_path() / fmt::format("backmark-{}.xlsx", ::getpid()))
          .string();
  lxw_workbook* book = workbook_new(path.c_str());
  lxw_worksheet* sheet = workbook_add_worksheet(book, "Pieces");
  lxw_worksheet* other = workbook_add_worksheet(book, "Lenders");
  worksheet_write_string(sheet, 0, 0, "id", nullptr);
  worksheet_write_string(sheet, 0, 1, "height", nullptr);
  worksheet_write_string(sheet, 0, 2, "date", nullptr);
  worksheet_write_string(sheet, 1, 0, "ES 1 & caf\xC3\xA9", nullptr);
  worksheet_write_number(sheet, 1, 1, 5.875, nullptr);
  lxw_format* day = workbook_add_format(book);
  format_set_num_format(day, "yyyy-mm-dd");
  worksheet_write_number(sheet, 1, 2, 20000, day);
  worksheet_write_string(other, 0, 0, "code", nullptr);
  worksheet_write_string(other, 1, 0, "L 1", nullptr);
  workbook_close(book);
  const auto bytes = read_file(path);
  std::filesystem::remove(path);
  return bytes ? *bytes : std::string();
}

}  // namespace

TEST_CASE("a workbook's first sheet is read, its day numbers are said and not guessed") {
  const auto table = read_table(workbook(), "list.xlsx");
  REQUIRE_MESSAGE(table.ok(), (table.ok() ? "" : to_line(table.problem())));
  CHECK(table->headings == Cells{"id", "height", "date"});
  CHECK(table->rows[0].cells == Cells{"ES 1 & caf\xC3\xA9", "5.875", "20000"});
  REQUIRE(table->said.size() == 1);
  CHECK(contains(table->said[0],
                 "1 cells are shown as dates and stored as day numbers, the "
                 "first is C2"));
}

TEST_CASE("another sheet is read by its name, a missing one is refused with those there are") {
  CHECK(read_xlsx(workbook(), "list.xlsx", "Lenders")->rows[0].cells == Cells{"L 1"});
  const auto none = read_xlsx(workbook(), "list.xlsx", "Loans");
  REQUIRE_FALSE(none.ok());
  CHECK(none.problem().fix == "its sheets are \"Pieces\", \"Lenders\"");
}

TEST_CASE("a damaged workbook is refused with words") {
  const std::string bytes = workbook();
  const auto cut = read_table(bytes.substr(0, bytes.size() / 2), "list.xlsx");
  REQUIRE_FALSE(cut.ok());
  CHECK(cut.problem().what == "the workbook is damaged: its archive does not open");
}
