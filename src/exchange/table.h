// A spreadsheet as rows of text, whatever kind of file it came from.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace backmark::exchange {

using Cells = std::vector<std::string>;

// Something to be said of one cell. Rows are counted as a spreadsheet counts them: the headings
// are row 1, and a line break inside a cell does not begin a new row. Row 0: the whole file.
struct CellRemark {
  long row = 0;
  std::string column;  // the heading; empty: the whole row
  std::string what;
  std::string fix;

  friend bool operator==(const CellRemark&, const CellRemark&) = default;
};

enum class Encoding { utf8, windows_1252 };

// How a text file writes its rows.
struct Dialect {
  char separator = ',';
  std::string line_end = "\r\n";
  Encoding encoding = Encoding::utf8;
  bool byte_order_mark = false;
};

struct TableRow {
  long number = 0;  // as a spreadsheet shows it
  Cells cells;      // as many as there are headings
};

// Texts are UTF-8. Headings are unique: a heading that comes again is given a number, "title
// (2)", a missing one is called "column 7".
struct Table {
  Cells headings;
  std::vector<TableRow> rows;
  Dialect dialect;
  std::vector<CellRemark> faults;  // rows that do not fit the headings; they are not in `rows`
  std::vector<TableRow> misfits;   // those rows, with all the cells they have
  std::vector<std::string> said;   // what was found out or dropped, for the report
};

// Reads .xlsx by its bytes and anything else as CSV. `name` is for messages; `sheet` names a
// sheet of an .xlsx, empty: the first. Problems: bad_input (no headings, a quote that never
// closes, UTF-16, damaged), refused (.xls, .ods, .numbers, PDF: says how to save as CSV),
// not_found (no such sheet).
Result<Table> read_table(std::string_view bytes,
                         const std::string& name,
                         const std::string& sheet = "");

// From records as read to a table: headings made unique, wholly empty rows and columns at the
// ends dropped and said, short rows filled, rows that are too long set apart as faults.
// Problems: bad_input (there are no headings).
Result<Table> to_table(std::vector<Cells> records, const std::string& name);

}  // namespace backmark::exchange
