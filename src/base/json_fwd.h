#pragma once

#include <nlohmann/json_fwd.hpp>

namespace backmark {

// Keys stay in the order they were written, so that the same show prints the same bytes.
using Json = nlohmann::ordered_json;

}  // namespace backmark
