// A table of marks: stated windows of the character "mark", whose values are marks as they
// stand on pieces ("crowned K", "c"). A mark that returns has several windows.
#pragma once

#include <string_view>

namespace backmark::model {

inline constexpr std::string_view mark_table_key = "mark";

}  // namespace backmark::model
