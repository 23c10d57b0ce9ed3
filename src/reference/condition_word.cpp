#include "reference/condition_word.h"

#include <algorithm>

#include "reference/shipped.h"

namespace backmark::reference {

const std::vector<ConditionWord>& condition_words() {
  static const std::vector<ConditionWord> list = [] {
    std::vector<ConditionWord> words;
    for (const auto& cells : own_rows("condition-words.csv")) {
      words.push_back({cells[0], cells[1], cells[2], cells[3], cells[4]});
    }
    return words;
  }();
  return list;
}

bool is_condition_word(std::string_view state) {
  const auto& words = condition_words();
  return std::any_of(words.begin(), words.end(),
                     [state](const ConditionWord& one) { return one.word == state; });
}

}  // namespace backmark::reference
