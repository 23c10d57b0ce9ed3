// The words of a date text, each with what it may mean.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark {

enum class DateWord {
  number,   // digits; `value`, `digits`
  ordinal,  // 19th, third; `value`
  plural,   // 1950s, 1880's; `value`
  about,    // c., circa, about
  doubt,    // ?, possibly, probably
  early,
  middle,
  late,
  fraction,  // half, quarter, third of; `value` is how many make a whole
  century,
  before,
  after,
  bce,
  ce,
  month,  // `value` 1 to 12
  design,
  made,
  undated,
  to,      // dash, "to", "until" between two dates
  either,  // "or"
  comma,   // comma, semicolon, "and"
  slash,
  open,    // (
  close,   // )
  filler,  // the, of, in, period: carries nothing
  other,   // not known
};

struct DateToken {
  DateWord word = DateWord::other;
  long value = 0;
  int digits = 0;    // of a number as written
  std::string text;  // as written
};

std::vector<DateToken> date_tokens(std::string_view text);

}  // namespace backmark
