#include "exchange/csv.h"

#include <algorithm>

#include "base/csv_read.h"
#include "base/csv_write.h"
#include "base/text.h"
#include "exchange/encoding.h"

namespace backmark::exchange {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

std::string line_end_of(std::string_view text) {
  const std::size_t at = text.find_first_of("\r\n");
  if (at == std::string_view::npos || text[at] == '\n') {
    return at == std::string_view::npos ? "\r\n" : "\n";
  }
  return at + 1 < text.size() && text[at + 1] == '\n' ? "\r\n" : "\r";
}

// How many cells the first records have under this separator, or 0 if they disagree.
std::size_t steady_width(std::string_view text, char separator) {
  CsvReader reader(text, separator);
  Cells cells;
  if (!reader.next(cells)) {
    return 0;
  }
  const std::size_t width = cells.size();
  int same = 0;
  int seen = 0;
  while (seen < 10 && reader.next(cells)) {
    ++seen;
    same += cells.size() == width ? 1 : 0;
  }
  return 2 * same >= seen ? width : 0;
}

std::string separator_name(char separator) {
  return separator == ',' ? "comma" : separator == ';' ? "semicolon" : "tab";
}

Problem utf16(const std::string& name) {
  return {.fault = Fault::bad_input,
          .what = "the file is written in UTF-16 or is not text",
          .where = name,
          .fix = "open it in the spreadsheet and save it as \"CSV UTF-8\""};
}

}  // namespace

char sniff_separator(std::string_view text) {
  char best = ',';
  std::size_t width = 1;
  for (const char separator : {',', ';', '\t'}) {
    const std::size_t found = steady_width(text, separator);
    if (found > width) {
      best = separator;
      width = found;
    }
  }
  return best;
}

Result<Table> read_csv(std::string_view bytes, const std::string& name) {
  Dialect dialect;
  if (starts_with(bytes, byte_order_mark)) {
    dialect.byte_order_mark = true;
    bytes.remove_prefix(byte_order_mark.size());
  }
  if (bytes.find('\0') != std::string_view::npos || starts_with(bytes, "\xFF\xFE") ||
      starts_with(bytes, "\xFE\xFF")) {
    return utf16(name);
  }
  std::string converted;
  if (!is_utf8(bytes)) {
    dialect.encoding = Encoding::windows_1252;
    converted = from_windows_1252(bytes);
    bytes = converted;
  }
  dialect.separator = sniff_separator(bytes);
  dialect.line_end = line_end_of(bytes);

  CsvReader reader(bytes, dialect.separator);
  std::vector<Cells> records;
  for (Cells cells; reader.next(cells);) {
    records.push_back(cells);
  }
  if (reader.problem()) {
    Problem problem = *reader.problem();
    problem.where = name + ", " + problem.where;
    return problem;
  }
  return to_table(std::move(records), name).then([&](Table table) -> Result<Table> {
    table.dialect = dialect;
    if (dialect.encoding == Encoding::windows_1252) {
      table.said.insert(
          table.said.begin(),
          "the text is not UTF-8 and was read as Windows-1252: look at the accents");
    }
    table.said.insert(table.said.begin(),
                      "cells are separated by " + separator_name(dialect.separator));
    return table;
  });
}

std::string write_csv(const Cells& headings,
                      const std::vector<Cells>& rows,
                      const CsvStyle& style) {
  std::string out;
  const CsvForm form{.separator = style.dialect.separator,
                     .line_end = style.dialect.line_end,
                     .guard_formulas = style.guard_formulas};
  append_csv_row(out, headings, form);
  for (const Cells& row : rows) {
    append_csv_row(out, row, form);
  }
  if (style.dialect.encoding == Encoding::windows_1252) {
    if (auto bytes = to_windows_1252(out)) {
      return *std::move(bytes);
    }
  }
  return style.dialect.byte_order_mark ? std::string(byte_order_mark) + out : out;
}

}  // namespace backmark::exchange
