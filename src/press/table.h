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
};

// A line of a table: a row of cells, the head of a group (first cell only), or a sum.
struct TableLine {
  enum class Kind { row, group, sum };
  Kind kind = Kind::row;
  std::vector<std::string> cells;  // one a column; "" leaves it white
};

struct TableLook {
  double row_mm = 6;  // 9.2 for handwriting
  double cell_pt = 7.6;
  // A box at the foot of every page; none if empty.
  std::string caution_first;
  std::string caution_rest;
};

// Adds as many pages as the lines need. A group of 3 rows or fewer is never split, no group
// head stands alone at the foot of a page, and a cell that is too wide is cut with an ellipsis.
void add_table(Sheets& sheets,
               const PressJob& job,
               const std::vector<Column>& columns,
               const std::vector<TableLine>& lines,
               const TableLook& look,
               const std::string& second_line);

// Where pages begin, as indices into lines, for a page that holds `room` rows (group heads
// count one and a half). What add_table uses.
std::vector<std::size_t> page_starts(const std::vector<TableLine>& lines, double room);

}  // namespace backmark::press
