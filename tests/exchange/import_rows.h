// Rows of text taken into a show in memory.
#pragma once

#include <doctest/doctest.h>
#include <string>

#include "exchange/apply.h"
#include "exchange/csv.h"
#include "exchange/import.h"
#include "exchange/import_map.h"

namespace backmark {

inline Result<exchange::ImportOutcome> import_of(const model::Show& show,
                                                 const std::string& csv,
                                                 std::string_view map,
                                                 exchange::ImportOptions options = {}) {
  options.file = "list.csv";
  const auto table = exchange::read_csv(csv, "list.csv");
  REQUIRE(table.ok());
  const auto read = exchange::read_map(map, "list.toml");
  REQUIRE_MESSAGE(read.ok(), (read.ok() ? "" : to_line(read.problem())));
  return exchange::import_rows(show, *table, *read, options);
}

// All rows are good and are taken.
inline exchange::ImportOutcome take_rows_of(model::Show& show,
                                            const std::string& csv,
                                            std::string_view map,
                                            const exchange::ImportOptions& options = {}) {
  auto out = import_of(show, csv, map, options);
  REQUIRE_MESSAGE(out.ok(), (out.ok() ? "" : to_line(out.problem())));
  for (const exchange::CellRemark& fault : out->faults) {
    FAIL_CHECK(fault.row << " " << fault.column << ": " << fault.what);
  }
  apply(show, out->change);
  return *std::move(out);
}

}  // namespace backmark
