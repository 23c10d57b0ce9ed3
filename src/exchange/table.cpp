#include "exchange/table.h"

#include <algorithm>
#include <unordered_set>

#include "base/text.h"
#include "exchange/csv.h"
#include "exchange/xlsx.h"

namespace backmark::exchange {

namespace {

bool is_empty(const Cells& cells) {
  return std::all_of(cells.begin(), cells.end(),
                     [](const std::string& cell) { return trim(cell).empty(); });
}

// The old binary workbook, PDF: what they begin with.
bool is_foreign(std::string_view bytes) {
  return starts_with(bytes, "\xD0\xCF\x11\xE0") || starts_with(bytes, "%PDF");
}

std::size_t used_width(const std::vector<Cells>& records) {
  std::size_t width = 0;
  for (const Cells& cells : records) {
    for (std::size_t i = cells.size(); i > width; --i) {
      if (!trim(cells[i - 1]).empty()) {
        width = i;
        break;
      }
    }
  }
  return width;
}

// The headings end where they and everything below them are empty.
std::size_t heading_width(const std::vector<Cells>& records) {
  std::size_t width = used_width({records.begin(), records.begin() + 1});
  const std::size_t headings = records.front().size();
  for (const Cells& cells : records) {
    for (std::size_t i = std::min(cells.size(), headings); i > width; --i) {
      if (!trim(cells[i - 1]).empty()) {
        width = i;
        break;
      }
    }
  }
  return width;
}

Cells unique_headings(Cells headings, std::vector<std::string>& said) {
  std::unordered_set<std::string> taken;
  for (std::size_t i = 0; i < headings.size(); ++i) {
    std::string heading(trim(headings[i]));
    if (heading.empty()) {
      heading = fmt::format("column {}", i + 1);
      said.push_back(
          fmt::format("column {} has no heading and is called \"{}\"", i + 1, heading));
    }
    std::string name = heading;
    for (int again = 2; !taken.insert(name).second; ++again) {
      name = fmt::format("{} ({})", heading, again);
    }
    if (name != heading) {
      said.push_back(fmt::format("the heading \"{}\" comes again; column {} is called \"{}\"",
                                 heading, i + 1, name));
    }
    headings[i] = std::move(name);
  }
  return headings;
}

CellRemark too_long(const TableRow& row, std::size_t width) {
  std::size_t used = row.cells.size();
  while (trim(row.cells[used - 1]).empty()) {
    --used;
  }
  return {
      .row = row.number,
      .what = fmt::format("the row has {} cells and there are {} headings", used, width),
      .fix = "put quotes around a cell that holds the separator, or add the missing heading"};
}

// Cuts trailing empty cells, fills short rows up; false if something stands past the headings.
bool fit(Cells& cells, std::size_t width) {
  while (cells.size() > width && trim(cells.back()).empty()) {
    cells.pop_back();
  }
  if (cells.size() > width) {
    return false;
  }
  cells.resize(width);
  return true;
}

}  // namespace

Result<Table> to_table(std::vector<Cells> records, const std::string& name) {
  Table table;
  const std::size_t all = records.size();
  while (!records.empty() && is_empty(records.back())) {
    records.pop_back();
  }
  if (records.empty() || is_empty(records.front())) {
    return Problem{.fault = Fault::bad_input,
                   .what = "the first row holds no headings",
                   .where = name,
                   .fix = "let row 1 name the columns"};
  }
  if (all > records.size()) {
    table.said.push_back(
        fmt::format("{} empty rows at the end were left out", all - records.size()));
  }
  const std::size_t width = heading_width(records);
  if (width < records.front().size()) {
    table.said.push_back(fmt::format("{} empty columns at the end were left out",
                                     records.front().size() - width));
  }
  records.front().resize(width);
  table.headings = unique_headings(std::move(records.front()), table.said);

  long empty = 0;
  long filled = 0;
  table.rows.reserve(records.size() - 1);
  for (std::size_t i = 1; i < records.size(); ++i) {
    TableRow row{.number = static_cast<long>(i) + 1, .cells = std::move(records[i])};
    if (is_empty(row.cells)) {
      ++empty;
      continue;
    }
    filled += row.cells.size() < width ? 1 : 0;
    if (fit(row.cells, width)) {
      table.rows.push_back(std::move(row));
    } else {
      table.faults.push_back(too_long(row, width));
      table.misfits.push_back(std::move(row));
    }
  }
  if (empty > 0) {
    table.said.push_back(fmt::format("{} empty rows between others were left out", empty));
  }
  if (filled > 0) {
    table.said.push_back(
        fmt::format("{} rows end early; their missing cells count as empty", filled));
  }
  return table;
}

Result<Table> read_table(std::string_view bytes,
                         const std::string& name,
                         const std::string& sheet) {
  if (is_zip(bytes)) {
    return read_xlsx(bytes, name, sheet);
  }
  if (is_foreign(bytes)) {
    return Problem{
        .fault = Fault::refused,
        .what = "this kind of file is not read",
        .where = name,
        .fix = "open it in the spreadsheet and save it as \"CSV UTF-8\" or as .xlsx"};
  }
  return read_csv(bytes, name);
}

}  // namespace backmark::exchange
