#include "exchange/csv.h"

#include <algorithm>

#include "base/csv_write.h"
#include "base/text.h"
#include "exchange/encoding.h"

namespace backmark::exchange {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

bool ends_line(char character) {
  return character == '\n' || character == '\r';
}

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

bool CsvReader::fail(std::string what, std::string fix) {
  problem_ = Problem{.fault = Fault::bad_input,
                     .what = std::move(what),
                     .where = fmt::format("row {}", row_),
                     .fix = std::move(fix)};
  return false;
}

bool CsvReader::at_end_of_cell() const {
  return at_ == text_.size() || text_[at_] == separator_ || ends_line(text_[at_]);
}

bool CsvReader::read_quoted(std::string& cell) {
  ++at_;
  for (;;) {
    const std::size_t quote = text_.find('"', at_);
    if (quote == std::string_view::npos) {
      return fail("a quoted cell begins here and never ends",
                  "close the quote, or double a quote that belongs to the text");
    }
    cell += text_.substr(at_, quote - at_);
    at_ = quote + 1;
    if (at_ == text_.size() || text_[at_] != '"') {
      break;
    }
    cell += '"';
    ++at_;
  }
  return at_end_of_cell() ||
         fail(fmt::format("text follows the closing quote of the cell \"{}\"",
                          cell.substr(0, 40)),
              "double every quote inside a quoted cell, or save the file again as CSV");
}

void CsvReader::read_plain(std::string& cell) {
  const std::size_t begin = at_;
  while (!at_end_of_cell()) {
    ++at_;
  }
  cell = text_.substr(begin, at_ - begin);
}

bool CsvReader::next(Cells& cells) {
  if (problem_ || at_ == text_.size()) {
    return false;
  }
  ++row_;
  std::size_t count = 0;
  for (;;) {
    if (cells.size() == count) {
      cells.emplace_back();
    }
    std::string& cell = cells[count++];
    cell.clear();
    if (at_ < text_.size() && text_[at_] == '"') {
      if (!read_quoted(cell)) {
        return false;
      }
    } else {
      read_plain(cell);
    }
    if (at_ == text_.size() || text_[at_] != separator_) {
      break;
    }
    ++at_;
  }
  cells.resize(count);
  if (at_ < text_.size()) {
    at_ += text_[at_] == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n' ? 2 : 1;
  }
  return true;
}

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
