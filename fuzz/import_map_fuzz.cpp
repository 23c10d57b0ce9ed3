// Any text is a map or a Problem with words, never a crash.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "exchange/import_map.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto map = backmark::exchange::read_map(text, "fuzz.toml");
  if (!map && map.problem().what.empty()) {
    std::abort();
  }
  return 0;
}
