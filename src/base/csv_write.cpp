#include "base/csv_write.h"

#include "base/text.h"

namespace backmark {

namespace {

bool needs_quotes(std::string_view cell, char separator) {
  return cell.find_first_of("\"\r\n") != std::string_view::npos ||
         cell.find(separator) != std::string_view::npos;
}

bool needs_guard(std::string_view cell) {
  return !cell.empty() && std::string_view("=+-@\t\r'").find(cell[0]) != std::string_view::npos;
}

void append_cell(std::string& out, std::string_view cell, const CsvForm& form) {
  const std::string_view guard = form.guard_formulas && needs_guard(cell) ? "'" : "";
  if (!needs_quotes(cell, form.separator)) {
    out.append(guard).append(cell);
    return;
  }
  out.append("\"").append(guard);
  for (const char character : cell) {
    out.append(character == '"' ? 2 : 1, character);
  }
  out += '"';
}

}  // namespace

void append_csv_row(std::string& out,
                    const std::vector<std::string>& cells,
                    const CsvForm& form) {
  if (cells.size() == 1 && cells[0].empty()) {
    out += "\"\"";
  }
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) {
      out += form.separator;
    }
    append_cell(out, cells[i], form);
  }
  out += form.line_end;
}

std::string unguarded(std::string_view cell) {
  return std::string(starts_with(cell, "'") ? cell.substr(1) : cell);
}

}  // namespace backmark
