#include "evidence/style_table.h"

#include <algorithm>

namespace backmark::evidence {

int Vocabulary::add(std::string_view term) {
  const auto [found, fresh] =
      numbers_.try_emplace(std::string(term), static_cast<int>(names_.size()));
  if (fresh) {
    names_.emplace_back(term);
  }
  return found->second;
}

std::optional<int> Vocabulary::find(std::string_view term) const {
  const auto found = numbers_.find(std::string(term));
  if (found == numbers_.end()) {
    return std::nullopt;
  }
  return found->second;
}

namespace {

void check_value(const StyleCharacter& character, const StyleValue& value) {
  if (character.shape == CharacterShape::number) {
    if (!value.terms.empty() || (value.number && !(*value.number > 0))) {
      throw BrokenPromise("a number is positive and has no terms: " + character.name);
    }
    return;
  }
  const auto known = static_cast<int>(character.vocabulary.size());
  for (std::size_t i = 0; i < value.terms.size(); ++i) {
    const bool rising = i == 0 || value.terms[i - 1] < value.terms[i];
    if (!rising || value.terms[i] < 0 || value.terms[i] >= known) {
      throw BrokenPromise("terms are known and ascending: " + character.name);
    }
  }
  if (value.number || (character.shape == CharacterShape::category && value.terms.size() > 1)) {
    throw BrokenPromise("a category has one term at most: " + character.name);
  }
}

}  // namespace

void check(const StyleTable& table) {
  for (const auto& piece : table.pieces) {
    if (piece.values.size() != table.characters.size()) {
      throw BrokenPromise("a style piece has a value, or a gap, for every character");
    }
    if (!(piece.weight >= 0 && piece.weight <= 1) || (piece.maker && *piece.maker < 0)) {
      throw BrokenPromise("a style piece has a weight of 0 to 1 and a maker of 0 or more");
    }
    for (std::size_t c = 0; c < piece.values.size(); ++c) {
      check_value(table.characters[c], piece.values[c]);
    }
  }
  for (const auto& window : table.windows) {
    if (window.character >= table.characters.size()) {
      throw BrokenPromise("a window belongs to a character");
    }
    const auto& character = table.characters[window.character];
    if (window.term < 0 ||
        static_cast<std::size_t>(window.term) >= character.vocabulary.size() ||
        window.span.last < window.span.first) {
      throw BrokenPromise("a window belongs to a known term and has years in order");
    }
  }
}

}  // namespace backmark::evidence
