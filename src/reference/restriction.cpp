#include "reference/restriction.h"

#include <algorithm>

#include "base/text.h"
#include "reference/shipped.h"

namespace backmark::reference {

namespace {

std::vector<std::string> parts(const std::string& cell) {
  std::vector<std::string> list;
  for (const auto part : split(cell, "|")) {
    list.emplace_back(trim(part));
  }
  return list;
}

const Restriction* find_rule(const std::string& key) {
  const auto& all = restrictions();
  const auto at =
      std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.key == key; });
  if (at == all.end()) {
    throw BrokenPromise(
        fmt::format("restricted-words.csv names a rule \"{}\" that is none", key));
  }
  return &*at;
}

}  // namespace

const std::vector<Restriction>& restrictions() {
  static const std::vector<Restriction> list = [] {
    std::vector<Restriction> all;
    for (const auto& cells : own_rows("restrictions.csv")) {
      all.push_back({cells[0], cells[1], cells[2], cells[3], cells[4], cells[5],
                     parts(cells[6]), cells[7], cells[8], cells[9], cells[10], cells[11]});
    }
    return all;
  }();
  return list;
}

const std::vector<RestrictedWord>& restricted_words() {
  static const std::vector<RestrictedWord> list = [] {
    std::vector<RestrictedWord> all;
    for (const auto& cells : own_rows("restricted-words.csv")) {
      RestrictedWord word{
          cells[0], own_number("restricted-words.csv", cells[1]), {}, cells[3], cells[4]};
      for (const std::string& key : parts(cells[2])) {
        word.rules.push_back(find_rule(key));
      }
      all.push_back(std::move(word));
    }
    return all;
  }();
  return list;
}

const RestrictedWord* restricted_word(std::string_view word) {
  const auto& all = restricted_words();
  const auto at =
      std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.word == word; });
  return at == all.end() ? nullptr : &*at;
}

}  // namespace backmark::reference
