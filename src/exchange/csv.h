// Rows of text separated by commas and their kin (RFC 4180, and what spreadsheets really
// write).
//
//   file   = [BOM] record *(end record) [end]        end = CRLF / LF / CR
//   record = cell *(separator cell)                   separator = "," / ";" / TAB, one per file
//   cell   = '"' *(any but '"' / '""') '"' / *(any but separator and end)
//
// Spaces belong to the cell. A quote inside an unquoted cell is an ordinary character (feet and
// inches are written so); text after a closing quote is refused.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "exchange/table.h"

namespace backmark::exchange {

// Record after record, in time linear in the bytes and holding one record at a time.
// The text must outlive the reader.
class CsvReader {
 public:
  CsvReader(std::string_view text, char separator) : text_(text), separator_(separator) {}

  // The next record into `cells`; false at the end or at a problem.
  bool next(Cells& cells);
  // Set once a record could not be read. Problems: bad_input, with the row in `where`.
  const std::optional<Problem>& problem() const { return problem_; }
  long row() const { return row_; }  // of the record last read, from 1

 private:
  bool read_quoted(std::string& cell);
  void read_plain(std::string& cell);
  bool at_end_of_cell() const;
  bool fail(std::string what, std::string fix);

  std::string_view text_;
  char separator_;
  std::size_t at_ = 0;
  long row_ = 0;
  std::optional<Problem> problem_;
};

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
