// The show given back as the spreadsheet it came from.
//
// Every cell that still says what the show holds is given back as it was written. Where the
// show has moved on, the cell is written anew from the records; a piece that never was in the
// file gets a row of its own. Importing the export changes nothing but the cells that the show
// overrules.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "exchange/csv.h"
#include "exchange/import_map.h"
#include "model/show.h"

namespace backmark::exchange {

struct CsvExport {
  Cells headings;
  std::vector<Cells> rows;  // in the order of the show's pieces, makers or sources
  int as_written = 0;       // rows given back to the letter
  int rewritten = 0;        // rows with a cell written anew
};

// By the map that took the file in. Rows of observations are written from the records.
// Problems: none; a show that knows nothing of the map's file gives the map's own columns.
CsvExport export_rows(const model::Show& show, const ImportMap& map);

}  // namespace backmark::exchange
