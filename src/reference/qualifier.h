// The words that stand before or after a maker's name, and what they claim.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark::reference {

// Whose hand a qualifier claims.
enum class Hand { maker, shop, near, tradition, look, nobody };

struct Qualifier {
  std::string phrase;               // as the records keep it: "attributed to"
  std::vector<std::string> before;  // other words for it before a name, lower case
  std::vector<std::string> after;   // signs of it after a name: "(attributed)", "?"
  std::string aat;  // number in the Art & Architecture Thesaurus; empty: none known
  Hand hand = Hand::nobody;
  std::string meaning;
  std::string source;
  std::string status;
};

// Rows of qualifiers.csv, the firmest first.
const std::vector<Qualifier>& qualifiers();
// The row of a phrase as the records keep it, or null.
const Qualifier* qualifier(std::string_view phrase);

}  // namespace backmark::reference
