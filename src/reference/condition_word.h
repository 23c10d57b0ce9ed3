// The agreed words for a state that was seen.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark::reference {

struct ConditionWord {
  std::string word;    // "scratched"
  std::string letter;  // drawn on an outline: "S"; empty: written out
  std::string meaning;
  std::string source;
  std::string status;
};

// Rows of condition-words.csv, as they stand.
const std::vector<ConditionWord>& condition_words();
// Whether a state is an agreed word, in lower case.
bool is_condition_word(std::string_view state);

}  // namespace backmark::reference
