// A cell as a list of values, and cells that stand in a list of the map. Bodies only.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark::exchange {

// Whether the list has the cell, in any letter case.
bool holds(const std::vector<std::string>& list, std::string_view cell);

// The cell cut at every separator, without white space and empty pieces.
std::vector<std::string> values_of(std::string_view cell,
                                   const std::vector<std::string>& separators);

}  // namespace backmark::exchange
