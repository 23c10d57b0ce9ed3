// A spreadsheet that comes as text, from a page: its columns read by their headings unless said
// otherwise, its cells mended before they are taken in.
#pragma once

#include "base/json_fwd.h"
#include "desk/open.h"
#include "exchange/guess_map.h"
#include "exchange/import.h"

namespace backmark::desk {

struct SheetRead {
  exchange::Table table;
  exchange::ImportMap map;
  std::vector<exchange::ColumnReading> readings;  // empty where a map was given
  std::string file;                               // its name, for messages
};

// From --text, --name, --columns and --mend. Problems: bad_input (no table, a column or a cell
// that the table has not, a word that no column can be; see guess_map.h, import_map.h).
Result<SheetRead> read_sheet_text(const Call& call, const model::Show& show);

// {columns: [{heading, word, example}], headings, faulty: [{row, cells}], rest, rows}
Json sheet_json(const SheetRead& read, const exchange::ImportOutcome& outcome);

}  // namespace backmark::desk
