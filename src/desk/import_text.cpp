#include "desk/import_text.h"

#include <algorithm>
#include <set>

#include "base/json.h"
#include "base/text.h"

namespace backmark::desk {

namespace {

using exchange::ColumnReading;
using exchange::Table;
using exchange::TableRow;

Problem no_column(const std::string& heading, const Table& table, const std::string& where) {
  return {Fault::bad_input, fmt::format("no column is headed \"{}\"", heading), where,
          "the columns are " + join(table.headings, ", ")};
}

// "HEADING=WORD"; a heading may hold an equals sign, a word never does.
Result<Done> read_columns(const std::vector<std::string>& columns,
                          const Table& table,
                          std::vector<ColumnReading>& readings) {
  for (const std::string& column : columns) {
    const std::size_t equals = column.rfind('=');
    const std::string heading = column.substr(0, equals);
    const auto at =
        std::find_if(readings.begin(), readings.end(),
                     [&](const ColumnReading& one) { return one.heading == heading; });
    if (equals == std::string::npos || at == readings.end()) {
      return no_column(heading, table, "--columns");
    }
    at->word = column.substr(equals + 1);
  }
  return Done{};
}

// "ROW:HEADING=VALUE"; the row as a spreadsheet counts it.
Result<Done> mend_cell(const std::string& mend, Table& table) {
  const std::size_t colon = mend.find(':');
  const std::size_t equals = mend.find('=', colon == std::string::npos ? 0 : colon);
  const auto number = to_whole(mend.substr(0, colon));
  if (colon == std::string::npos || equals == std::string::npos || !number) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" mends no cell", shortened(mend, 60)),
                   "--mend", "write ROW:HEADING=VALUE, as 14:made=195X"};
  }
  const std::string heading = mend.substr(colon + 1, equals - colon - 1);
  const auto column = std::find(table.headings.begin(), table.headings.end(), heading);
  if (column == table.headings.end()) {
    return no_column(heading, table, "--mend");
  }
  const auto row = std::find_if(table.rows.begin(), table.rows.end(),
                                [&](const TableRow& one) { return one.number == *number; });
  if (row == table.rows.end()) {
    return Problem{Fault::bad_input, fmt::format("there is no row {}", *number), "--mend",
                   "rows count as in the spreadsheet: the headings are row 1"};
  }
  row->cells[static_cast<std::size_t>(column - table.headings.begin())] =
      mend.substr(equals + 1);
  return Done{};
}

std::string example_of(const Table& table, std::size_t column) {
  for (const TableRow& row : table.rows) {
    if (!row.cells[column].empty()) {
      return row.cells[column];
    }
  }
  return "";
}

}  // namespace

Result<SheetRead> read_sheet_text(const Call& call, const model::Show& show) {
  SheetRead read;
  read.file = call.has("name") ? call.text("name") : "the spreadsheet";
  auto table = exchange::read_table(call.text("text"), read.file);
  if (!table) {
    return table.problem();
  }
  read.table = *std::move(table);
  for (const std::string& mend : call.texts("mend")) {
    if (auto done = mend_cell(mend, read.table); !done) {
      return done.problem();
    }
  }
  read.readings = exchange::guess_columns(read.table, show);
  if (auto done = read_columns(call.texts("columns"), read.table, read.readings); !done) {
    return done.problem();
  }
  const auto text = exchange::map_of(read.readings);
  if (!text) {
    return text.problem();
  }
  auto map = exchange::read_map(*text, read.file);
  if (!map) {
    return map.problem();
  }
  read.map = *std::move(map);
  return read;
}

Json sheet_json(const SheetRead& read, const exchange::ImportOutcome& outcome) {
  constexpr std::size_t most = 50;
  Json columns = Json::array();
  for (std::size_t i = 0; i < read.readings.size(); ++i) {
    columns.push_back({{"heading", read.readings[i].heading},
                       {"word", read.readings[i].word},
                       {"example", example_of(read.table, i)}});
  }
  std::set<long> faulty;
  for (const exchange::CellRemark& fault : outcome.faults) {
    faulty.insert(fault.row);
  }
  Json rows = Json::array();
  for (const auto& list : {read.table.rows, read.table.misfits}) {
    for (const TableRow& row : list) {
      if (faulty.contains(row.number) && rows.size() < most) {
        rows.push_back({{"row", row.number}, {"cells", row.cells}});
      }
    }
  }
  return {{"columns", columns},
          {"faulty", rows},
          {"rest", outcome.rest},
          {"rows", read.table.rows.size() + read.table.misfits.size()}};
}

}  // namespace backmark::desk
