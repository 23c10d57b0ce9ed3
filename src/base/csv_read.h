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

namespace backmark {

// Record after record, in time linear in the bytes and holding one record at a time.
// The text must outlive the reader.
class CsvReader {
 public:
  CsvReader(std::string_view text, char separator) : text_(text), separator_(separator) {}

  // The next record into `cells`; false at the end or at a problem.
  bool next(std::vector<std::string>& cells);
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

}  // namespace backmark
