// Arguments written key=value.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/result.h"

namespace backmark::desk {

// The last of a key given twice holds. Problem: bad_input, a text without "=".
Result<std::map<std::string, std::string>> read_pairs(const std::vector<std::string>& texts);

}  // namespace backmark::desk
