// Any bytes are a table or a Problem, never a crash; what was read can be written and read back.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "exchange/csv.h"

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
      const std::string written = write_csv({cell}, {}, {.guard_formulas = true});
      (void)unguarded(written);
    }
  }
  return 0;
}
