#include "reference/qualifier.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "reference/shipped.h"

namespace backmark::reference {

namespace {

constexpr std::string_view file = "qualifiers.csv";

Hand hand_of(std::string_view word) {
  constexpr std::array<std::string_view, 6> words{"maker",     "shop", "near",
                                                  "tradition", "look", "nobody"};
  const auto* const at = std::find(words.begin(), words.end(), word);
  if (at == words.end()) {
    throw BrokenPromise(fmt::format("{} knows no hand \"{}\"", file, word));
  }
  return static_cast<Hand>(at - words.begin());
}

std::vector<std::string> list_of(const std::string& cell) {
  std::vector<std::string> words;
  for (const std::string_view word : split(cell, "|")) {
    if (!word.empty()) {
      words.emplace_back(word);
    }
  }
  return words;
}

std::vector<Qualifier> read() {
  std::vector<Qualifier> list;
  for (const auto& cells : own_rows(file)) {
    list.push_back({cells[0], list_of(cells[1]), list_of(cells[2]), cells[3], hand_of(cells[4]),
                    cells[5], cells[6], cells[7]});
  }
  return list;
}

}  // namespace

const std::vector<Qualifier>& qualifiers() {
  static const std::vector<Qualifier> list = read();
  return list;
}

const Qualifier* qualifier(std::string_view phrase) {
  for (const Qualifier& one : qualifiers()) {
    if (one.phrase == phrase) {
      return &one;
    }
  }
  return nullptr;
}

}  // namespace backmark::reference
