#include "words/handling.h"

#include <algorithm>

#include "base/text.h"
#include "words/seen.h"

namespace backmark::words {

const std::vector<HandlingRule>& handling_rules() {
  static const std::vector<HandlingRule> rules{
      {{"silver"}, "Silver: no rubber, felt or newsprint."},
      {{"brass", "copper", "bronze", "nickel"}, "Copper alloy: gloves, dry tissue."},
      {{"pewter", "lead", "tin"},
       "Soft metal: nothing may press on it; no oak, no acid board."},
      {{"feather", "horn", "leather", "tortoiseshell", "bone", "ivory"},
       "Old organic matter: gloves, may carry pesticide residues."},
      {{"amber", "jet", "coral", "shell", "pearl"}, "Shell, amber, jet: no heat, no solvent."},
      {{"glass"}, "Glass: no shock, no sudden cold."},
  };
  return rules;
}

std::string handling_text(const model::Show& show, model::Id<model::Piece> piece) {
  const auto seen = words_seen(show, piece, {"material", "metal", "stone", "cord_type"});
  std::string text;
  for (const HandlingRule& rule : handling_rules()) {
    const bool holds = std::any_of(seen.begin(), seen.end(), [&](const SeenWord& word) {
      // "nickel silver" has no silver in it.
      const std::string material =
          replace_all(lower_ascii(word.text), "nickel silver", "nickel");
      const auto words = split(material, " ");
      return std::any_of(rule.materials.begin(), rule.materials.end(), [&](const auto& name) {
        return std::find(words.begin(), words.end(), name) != words.end();
      });
    });
    if (holds) {
      text += (text.empty() ? "" : " ") + std::string(rule.advice);
    }
  }
  return text;
}

}  // namespace backmark::words
