// A chance in words.
#pragma once

#include <string>

namespace backmark::words {

// Of a chance found by drawing, which never makes it certain: "62 %", "more than 99 %" from
// 0.995 on, "less than 1 %" up to 0.005.
std::string drawn_chance(double p);

}  // namespace backmark::words
