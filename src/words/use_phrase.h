// A stretch of use in words.
#pragma once

#include <string>

#include "model/use.h"

namespace backmark::words {

// "1948 to 1966" where both ends are known to the year or two, "about 1948 to 1966" where they
// are not; an end that may lie beyond `seen`, the years looked at, is "or earlier", "or later":
// "about 1964 to 1982 or later". Both ends in one year: "about 1955".
std::string phrase_use(const model::YearEnd& start, const model::YearEnd& end, YearSpan seen);

}  // namespace backmark::words
