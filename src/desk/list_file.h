// A spreadsheet that an operation takes as a list: rows read by their headings, all faults told
// at once.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/file.h"
#include "base/text.h"
#include "exchange/table.h"

namespace backmark::desk {

// A row by its headings; a heading that is not there, or an empty cell, reads as empty.
class ListRow {
 public:
  ListRow(const exchange::Cells& headings, const exchange::Cells& cells)
      : headings_(headings), cells_(cells) {}
  std::string_view at(std::string_view heading) const;

 private:
  const exchange::Cells& headings_;
  const exchange::Cells& cells_;
};

template <class Item>
struct ListRead {
  std::vector<Item> items;
  std::vector<long> rows;  // of the file, one an item
  Problems problems;       // each with its row
};

// The file as a table. Problems: those of read_file and exchange::read_table; bad_input (a
// heading that is needed is not there; `headings` is all there may be, for the message).
Result<exchange::Table> open_list(const Path& path,
                                  const std::vector<std::string>& needed,
                                  const std::string& headings);

// Reads every row by read_row(ListRow) -> Result<Item>. Problems: those of open_list.
template <class Item, class ReadRow>
Result<ListRead<Item>> read_list(const Path& path,
                                 const std::vector<std::string>& needed,
                                 const std::string& headings,
                                 const ReadRow& read_row) {
  const auto table = open_list(path, needed, headings);
  if (!table) {
    return table.problem();
  }
  const std::string name = path.filename().string();
  ListRead<Item> read;
  for (const exchange::CellRemark& fault : table->faults) {
    read.problems.push_back(
        {Fault::bad_input, fault.what, fmt::format("{}, row {}", name, fault.row), fault.fix});
  }
  for (const exchange::TableRow& row : table->rows) {
    Result<Item> item = read_row(ListRow(table->headings, row.cells));
    if (item) {
      read.items.push_back(*std::move(item));
      read.rows.push_back(row.number);
      continue;
    }
    Problem problem = item.problem();
    problem.where = fmt::format("{}, row {}", name, row.number);
    read.problems.push_back(std::move(problem));
  }
  return read;
}

}  // namespace backmark::desk
