// Which spaces of a text hold.
#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

#include "base/text.h"
#include "draw/paragraph.h"

namespace backmark::draw {

namespace {

// Words that hold on to a number after them.
constexpr std::array<std::string_view, 14> before_number{
    "no.",   "nos",    "nos.",  "p.",   "pp.",  "fig.",  "figs",
    "figs.", "lender", "about", "page", "vol.", "plate", "case"};
constexpr std::array<std::string_view, 16> units{"mm", "cm", "m",  "g",      "kg",   "lux",
                                                 "lx", "%",  "pt", "years",  "year", "pieces",
                                                 "km", "ml", "°C", "minutes"};
constexpr std::array<std::string_view, 12> months{
    "january", "february", "march",     "april",   "may",      "june",
    "july",    "august",   "september", "october", "november", "december"};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_capital(char c) {
  return c >= 'A' && c <= 'Z';
}

std::string_view bare(std::string_view word) {
  while (!word.empty() && (word.back() == ',' || word.back() == '.' || word.back() == ';' ||
                           word.back() == ':' || word.back() == ')')) {
    word.remove_suffix(1);
  }
  while (!word.empty() && word.front() == '(') {
    word.remove_prefix(1);
  }
  return word;
}

template <std::size_t N>
bool among(const std::array<std::string_view, N>& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

bool is_initial(std::string_view word) {
  return word.size() == 2 && is_capital(word[0]) && word[1] == '.';
}

bool holds(std::string_view left, std::string_view right) {
  if (left.empty() || right.empty()) {
    return false;
  }
  const bool number_left = is_digit(left.front());
  if (is_digit(bare(right).empty() ? ' ' : bare(right).front())) {
    std::string_view word = left;
    while (!word.empty() && word.front() == '(') {
      word.remove_prefix(1);
    }
    const std::string lower = lower_ascii(word);
    return among(before_number, lower);
  }
  if (number_left && is_digit(left.back())) {
    const std::string lower = lower_ascii(bare(right));
    return among(units, bare(right)) || among(months, lower);
  }
  return is_initial(left) && is_capital(right.front());
}

}  // namespace

std::string with_held_spaces(std::string_view text) {
  std::string out;
  std::string_view left;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, end - at);
    if (at > 0) {
      out += holds(left, word) ? "\u00A0" : " ";
    }
    out += word;
    left = word;
    at = end + 1;
    if (end + 1 == text.size()) {
      out += ' ';
    }
  }
  return out;
}

}  // namespace backmark::draw
