// Periods, dynasties and reigns with a name: "Meiji period", "26th Dynasty", "Qing".
#pragma once

#include <string>
#include <vector>

#include "base/date_tokens.h"
#include "base/year.h"

namespace backmark {

struct NamedPeriod {
  std::string place;               // "China"
  std::vector<std::string> names;  // lower case; "dynasty 26" for numbered ones
  YearSpan years;
  std::string source;
  std::string status;
};

// The rows of reference/periods.csv, as they were when the program was built.
const std::vector<NamedPeriod>& named_periods();

// The tokens with each name of a period made one token. A name counts beside "period",
// "dynasty", "era" or "reign", or if no unknown word stands next to it: "Ming vase" and "Louis
// XV style" are no dates.
std::vector<DateToken> with_periods(std::vector<DateToken> tokens);

}  // namespace backmark
