// Finding the words of a table in what somebody wrote.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark::reference {

// Cells that hold several words part them by a bar.
std::vector<std::string> bar_words(std::string_view cell);

// The length of the longest of `words` (lower case) that stands in `text` as whole words; 0:
// none.
std::size_t longest_word_in(std::string_view text, const std::vector<std::string>& words);

}  // namespace backmark::reference
