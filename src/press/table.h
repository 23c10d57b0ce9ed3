// Tables on sheets: hairlines, no vertical lines, heads on every page, groups that keep
// together.
#pragma once

#include <string>
#include <vector>

#include "press/sheet.h"

namespace backmark::press {

struct Column {
  std::string head;
  double width = 20;  // mm
  draw::Align align = draw::Align::left;
  bool quiet = false;  // cells in grey
  bool wrap = false;   // a long cell takes up to `most_lines` lines instead of being cut
};

inline constexpr std::size_t most_lines = 4;  // of a wrapped cell; the last is cut

// A line of a table: a row of cells, the head of a group (first cell only), or a sum.
struct TableLine {
  enum class Kind { row, group, sum };
  Kind kind = Kind::row;
  std::vector<std::string> cells;  // one a column; "" leaves it white
  double rows = 1;                 // its height in rows; add_table finds it for wrapped cells
};

struct TableLook {
  double row_mm = 6;  // 9.2 for handwriting
  double cell_pt = 7.6;
  // A box at the foot of every page; none if empty.
  std::string caution_first;
  std::string caution_rest;
};

// Adds as many pages as the lines need; a group that runs over has its head again, "continued".
// A group of 3 rows or fewer is never split, no group head stands alone at the foot of a page,
// and a cell that is too wide is cut with an ellipsis or, in a column that wraps, makes its row
// higher.
void add_table(Sheets& sheets,
               const PressJob& job,
               const std::vector<Column>& columns,
               std::vector<TableLine> lines,
               const TableLook& look,
               const std::string& second_line);

// Where pages begin, as indices into lines, for a page that holds `room` rows (group heads
// count one and a half, also those said again on the next page; rows their `rows`). What
// add_table uses.
std::vector<std::size_t> page_starts(const std::vector<TableLine>& lines, double room);

}  // namespace backmark::press
