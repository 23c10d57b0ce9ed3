// Forms, parts, materials and techniques, with their numbers in the Art & Architecture
// Thesaurus.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark::reference {

struct Term {
  std::string kind;  // "form", "part", "material", "technique"
  std::string term;  // "brooches"
  std::string aat;   // empty: not confirmed, and not to be filled from memory
  std::string source;
  std::string status;
};

// Rows of terms.csv, as they stand.
const std::vector<Term>& terms();
// The term of a kind, or null.
const Term* term(std::string_view kind, std::string_view text);

}  // namespace backmark::reference
