// What the single words of a date text may mean.
#pragma once

#include <optional>
#include <string_view>

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
  or_earlier,  // "or before" behind a date
  or_later,    // "or after" behind a date
  bce,
  ce,
  month,  // `value` 1 to 12
  design,
  made,
  altered,  // repaired, restored: not of the making
  undated,
  period,  // a named period; `value` is its place in named_periods()
  to,      // dash, "to", "until" between two dates
  either,  // "or"
  comma,   // comma, semicolon, "and"
  slash,
  open,    // (
  close,   // )
  filler,  // the, of, in, period: carries nothing
  other,   // not known
};

struct DateMeaning {
  DateWord word;
  long value = 0;
};

// The meaning of a word in lower case; nothing if it is not known. A slip of the pen in a long
// word ("ealy", "centruy") is forgiven: one letter left out, added, wrong or exchanged.
std::optional<DateMeaning> date_meaning(std::string_view lower);

}  // namespace backmark
