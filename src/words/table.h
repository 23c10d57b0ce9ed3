// The published table from odds to words, as data: the phrases are chosen by it and the note on
// method prints it.
#pragma once

#include <string_view>
#include <vector>

namespace backmark::words {

// One row. `floor` is the chance that the phrase claims: of all pieces so worded, at least this
// share must prove true. 0: the row claims nothing that can be scored.
struct TableRow {
  int row = 0;
  std::string_view phrase;  // by example
  std::string_view holds;   // when
  std::string_view says;    // in odds
  double floor = 0;
};

// Years, rows 1 to 10; the first row that holds wins. Runs are of consecutive whole years.
const std::vector<TableRow>& year_table();

// Makers, rows 1 to 9; the first row that holds wins. X leads among the named makers. Row 9 is
// never reached from odds: only the curator writes it.
const std::vector<TableRow>& maker_table();

// Places, rows 1 to 3.
const std::vector<TableRow>& place_table();

// Replaced parts, rows 1 to 3.
const std::vector<TableRow>& replaced_table();

// The row of that number.
const TableRow& row_of(const std::vector<TableRow>& table, int row);

// A phrase that was frozen for press changes only when its chance leaves the row by this much.
inline constexpr double frozen_margin = 0.03;

}  // namespace backmark::words
