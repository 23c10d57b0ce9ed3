// The words and kinds of value that a map is written with. Bodies only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <toml++/toml.h>
#include <vector>

#include "exchange/import_map.h"

namespace backmark::exchange {

template <class Value>
struct Named {
  std::string_view word;
  Value value;
};

using TargetWords = std::vector<Named<Target>>;
// What columns may be when the rows are these.
const TargetWords& words_of(RowsOf rows);

// A word that is not among the known ones, with the nearest. Column or option are for the
// caller to add.
Problem unknown_word(std::string_view what,
                     std::string_view word,
                     const std::vector<std::string>& known);
// `wanted`: "a text", "true or false" or "a list of texts".
Problem wrong_type(std::string_view key, std::string_view wanted);

Result<std::string> text_of(std::string_view key, const toml::node& node);
// A text, or a list of texts.
Result<std::vector<std::string>> texts_of(std::string_view key, const toml::node& node);

template <class List>
std::vector<std::string> all_words(const List& list) {
  std::vector<std::string> words;
  for (const auto& named : list) {
    words.emplace_back(named.word);
  }
  return words;
}

template <class Value, class List>
Result<Value> find_word(std::string_view what, std::string_view word, const List& list) {
  for (const auto& named : list) {
    if (named.word == word) {
      return named.value;
    }
  }
  return unknown_word(what, word, all_words(list));
}

// Moves a Result into its place; the Problem, if any, comes back.
template <class Value>
std::optional<Problem> put(Result<Value> result, Value& place) {
  if (!result) {
    return result.problem();
  }
  place = std::move(*result);
  return std::nullopt;
}

// Adds what the map says of the column of this heading. Problems: bad_input, without a place.
std::optional<Problem> read_column(std::string_view heading,
                                   const toml::node& node,
                                   ImportMap& map);

}  // namespace backmark::exchange
