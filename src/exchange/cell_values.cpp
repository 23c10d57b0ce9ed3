#include "exchange/cell_values.h"

#include <algorithm>

#include "base/text.h"

namespace backmark::exchange {

bool holds(const std::vector<std::string>& list, std::string_view cell) {
  return std::any_of(list.begin(), list.end(), [&](const std::string& text) {
    return lower_ascii(text) == lower_ascii(cell);
  });
}

std::vector<std::string> values_of(std::string_view cell,
                                   const std::vector<std::string>& separators) {
  std::vector<std::string> values{std::string(cell)};
  for (const std::string& separator : separators) {
    std::vector<std::string> finer;
    for (const std::string& value : values) {
      for (const auto part : split(value, separator)) {
        if (!trim(part).empty()) {
          finer.emplace_back(trim(part));
        }
      }
    }
    values = std::move(finer);
  }
  return values;
}

}  // namespace backmark::exchange
