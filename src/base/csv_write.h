// Rows of cells as CSV (RFC 4180), for every paper, list and export.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark {

struct CsvForm {
  char separator = ',';
  std::string line_end = "\r\n";
  // Puts an apostrophe before a cell that a spreadsheet would run as a formula (= + - @ tab CR
  // first) and before one that begins with an apostrophe, so that it can be taken away again.
  bool guard_formulas = false;
};

// Adds one row with its line end. Only cells that hold the separator, a quote or a line break
// are quoted; a row of one empty cell is written as "", since it would read as no row at all.
void append_csv_row(std::string& out,
                    const std::vector<std::string>& cells,
                    const CsvForm& form = {});

// The cell without the apostrophe of `guard_formulas`.
std::string unguarded(std::string_view cell);

}  // namespace backmark
