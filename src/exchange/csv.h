// CSV files as tables and back: separator, encoding and line ends found out and kept to. How
// rows are parted into cells stands in base/csv_read.h.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "exchange/table.h"

namespace backmark::exchange {

// The separator that cuts the headings and the first ten records into the same number of cells,
// most cells first; a comma if none cuts at all.
char sniff_separator(std::string_view text);

// Problems: bad_input (see read_table).
Result<Table> read_csv(std::string_view bytes, const std::string& name);

struct CsvStyle {
  Dialect dialect;
  bool guard_formulas = false;  // as CsvForm says
};

// Rows by base/csv_write.h. Windows-1252 is kept to if it has every character; else UTF-8.
std::string write_csv(const Cells& headings,
                      const std::vector<Cells>& rows,
                      const CsvStyle& style);

}  // namespace backmark::exchange
