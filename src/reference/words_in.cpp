#include "reference/words_in.h"

#include <algorithm>
#include <cctype>

#include "base/text.h"

namespace backmark::reference {

namespace {

bool is_letter(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 ||
         (static_cast<unsigned char>(c) & 0x80U) != 0;
}

bool stands_in(std::string_view text, std::string_view word) {
  for (std::size_t at = text.find(word); at != std::string_view::npos;
       at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    const bool begins = at == 0 || !is_letter(text[at - 1]);
    const bool ends = end == text.size() || !is_letter(text[end]);
    if (begins && ends) {
      return true;
    }
  }
  return false;
}

}  // namespace

std::vector<std::string> bar_words(std::string_view cell) {
  std::vector<std::string> words;
  for (const auto word : split(cell, "|")) {
    if (!trim(word).empty()) {
      words.emplace_back(trim(word));
    }
  }
  return words;
}

std::size_t longest_word_in(std::string_view text, const std::vector<std::string>& words) {
  const std::string lower = lower_ascii(text);
  std::size_t longest = 0;
  for (const std::string& word : words) {
    if (word.size() > longest && stands_in(lower, word)) {
      longest = word.size();
    }
  }
  return longest;
}

}  // namespace backmark::reference
