// The words of a date text, each with what it may mean.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/date_words.h"

namespace backmark {

struct DateToken {
  DateWord word = DateWord::other;
  long value = 0;
  int digits = 0;    // of a number as written
  std::string text;  // as written
};

std::vector<DateToken> date_tokens(std::string_view text);

}  // namespace backmark
