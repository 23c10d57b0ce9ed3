// One date of a text, and how it hangs together with the one before it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date_text.h"
#include "base/date_tokens.h"

namespace backmark {

enum class Joint { none, to, either, comma };
enum class DateRole { none, design, made, altered };
enum class DateKind { year, decade, century, period, bare };
enum class DateSide { within, before, after };
enum class DateEra { unsaid, bce, ce };

// One date as written. `bare` is a small number or ordinal whose meaning its neighbour settles
// ("16th to 18th century", "1885-90").
struct DatePhrase {
  DateKind kind = DateKind::year;
  long value = 0;  // year; first year of a decade; number of a century; place of a period
  int digits = 4;  // of a year as written
  DateWord part = DateWord::filler;        // early, middle, late, or fraction
  DateWord part_until = DateWord::filler;  // "mid to late": up to this part
  int part_number = 0;                     // second (2) quarter (4)
  int part_of = 0;
  DateEra era = DateEra::unsaid;
  DateSide side = DateSide::within;
  DateRole role = DateRole::none;
  bool about = false;
  bool with_limit = false;  // "by 1931" allows 1931, "before 1931" does not
  bool open_end = false;    // "1902-", "1902 or later"
  bool open_start = false;  // "1902 or earlier"
  std::string name;         // of a named period, as written
  Joint joint = Joint::none;
};

struct DatePhrases {
  std::vector<DatePhrase> dates;
  bool undated = false;
  bool doubtful = false;
  std::vector<std::string> left_over;
};

// The dates of a text's words, settled among each other (base/date_settle.h).
DatePhrases date_phrases(const std::vector<DateToken>& tokens);

}  // namespace backmark
