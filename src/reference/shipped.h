// The shipped tables, as rows of text. Each is a CSV file whose last two columns are `source`
// and `status`: where the row comes from, and how far it was checked.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace backmark::reference {

struct Shipped {
  std::string_view file;  // "qualifiers.csv"
  std::string_view text;  // as built into the program
  std::vector<std::string_view> columns;
  std::size_t key_columns = 1;  // the first columns, which together name a row
};

// Every table that is shipped, in the order of their names.
const std::vector<Shipped>& shipped();

// The rows of a table without its headings, as many cells each as it has columns. Problems:
// bad_input (other headings; a row that is too long or too short, names what another row names,
// or has no source or status), with the row in `where`.
Result<std::vector<std::vector<std::string>>> rows_of(const Shipped& table);

// The rows of the table with this file name. The program's own table is well formed, or the
// program is: BrokenPromise.
std::vector<std::vector<std::string>> own_rows(std::string_view file);

// A cell that holds a number, or a BrokenPromise that names file and cell.
double own_number(std::string_view file, const std::string& cell);

}  // namespace backmark::reference
