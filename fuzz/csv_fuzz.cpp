// Any bytes are a table or a Problem, never a crash; what was read can be written and read
// back.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "base/csv_write.h"
#include "exchange/csv.h"

using namespace backmark;
using namespace backmark::exchange;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const auto table = read_csv(bytes, "fuzz.csv");
  if (!table) {
    return 0;
  }
  for (const TableRow& row : table->rows) {
    if (row.cells.size() != table->headings.size()) {
      std::abort();
    }
    for (const std::string& cell : row.cells) {
      const auto again =
          read_csv(write_csv({"a", "b"}, {{"1", cell}}, {.guard_formulas = true}), "again.csv");
      if (!again || again->rows.size() != 1 || unguarded(again->rows[0].cells[1]) != cell) {
        std::abort();
      }
    }
  }
  return 0;
}
