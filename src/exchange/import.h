// Rows of a spreadsheet taken into a show: a value in, a change out, nothing written here.
//
// What is remembered of a file is each row as it was written (model::Row). A later import of
// the file compares cell with cell: what the file does not change is not touched, whatever the
// curator did with it since; what it changes supersedes its own older statement; what it no
// longer says is withdrawn. Where the curator has put another word in place, both stand and a
// note says so.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "exchange/import_map.h"
#include "exchange/table.h"
#include "model/change.h"

namespace backmark::exchange {

struct ImportOptions {
  std::string file;          // its name, for messages and the book of changes
  bool skip_faulty = false;  // take the good rows although others are at fault
  bool guarded =
      false;  // the file was written by export for a spreadsheet: take the guards off
};

struct ImportOutcome {
  explicit ImportOutcome(model::Change made) : change(std::move(made)) {}

  model::Change change;  // empty if anything is at fault and skip_faulty was not asked for
  int pieces_new = 0;
  int pieces_same = 0;
  int pieces_changed = 0;
  int others_new = 0;  // makers or sources, when the rows are those
  int others_same = 0;
  int others_changed = 0;
  std::vector<CellRemark> faults;  // by row
  std::vector<CellRemark> notes;   // kept, but to be looked at
  std::vector<std::string> said;   // of the file as a whole
  // The rows at fault under the file's headings, in its own dialect: mend and import again.
  // Empty if there are none.
  std::string rest;
};

// Problems: not_found (the map names a column that the file lacks, with the nearest heading),
// bad_input (decimal commas and points mixed in one file), conflict (a character of the show
// has another shape than the map says). Faults of rows are in the outcome, not Problems.
Result<ImportOutcome> import_rows(const model::Show& show,
                                  const Table& table,
                                  const ImportMap& map,
                                  const ImportOptions& options);

}  // namespace backmark::exchange
