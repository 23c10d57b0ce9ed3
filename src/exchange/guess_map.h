// What the columns of a spreadsheet may be, by their headings: a first reading that is shown to
// the curator before anything is taken in.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "exchange/table.h"
#include "model/show.h"

namespace backmark::exchange {

// `word` is a target of pieces ("number", "made", "note" ...), or "character:KEY", or
// "measure:KEY:UNIT".
struct ColumnReading {
  std::string heading;
  std::string word;
};

// One for each heading, in its order. A heading that says nothing is a note; a second column of
// what can stand only once (number, title, form, lot, lender, tray) is a note as well. If no
// heading says "number", the first column whose cells are all filled and all different is it.
std::vector<ColumnReading> guess_columns(const Table& table, const model::Show& show);

// The TOML of a map (import_map.h) for pieces. Problems: bad_input (a word of none of the three
// kinds); the map itself is for read_map() to judge.
Result<std::string> map_of(const std::vector<ColumnReading>& readings);

}  // namespace backmark::exchange
