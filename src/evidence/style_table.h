// What is known of the style of pieces, as a plain encoded table: any source can fill it.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/year.h"

namespace backmark::evidence {

enum class CharacterShape {
  category,  // one term of a list: classification, fitting
  terms,     // a set of terms that all count alike: places
  words,     // a set of terms, the rare ones counting more: words of a medium or title
  number,    // a positive number, compared on a log scale: height, cord diameter
};

// Terms of one character and their numbers, in order of first use.
class Vocabulary {
 public:
  int add(std::string_view term);
  std::optional<int> find(std::string_view term) const;
  const std::string& name(int term) const { return names_[static_cast<std::size_t>(term)]; }
  std::size_t size() const { return names_.size(); }

 private:
  std::vector<std::string> names_;
  std::unordered_map<std::string, int> numbers_;
};

struct StyleCharacter {
  std::string name;
  CharacterShape shape = CharacterShape::category;
  // Characters with the same tie share one distance weight in a small show; empty: its own.
  std::string tie;
  Vocabulary vocabulary;  // unused for numbers
};

// What one piece shows of one character. Missing (not recorded) is neither "absent" nor
// evidence; "looked, none" is a term of its own.
struct StyleValue {
  std::vector<int> terms;        // ascending, without repeats; at most one for a category
  std::optional<double> number;  // > 0

  bool missing() const { return terms.empty() && !number; }
};

struct StylePiece {
  // Pieces of one set, gift or purchase share a lot and are never each other's evidence in a
  // score. Any numbering; a piece by itself has a number of its own.
  int lot = 0;
  std::optional<YearSpan> stated;  // years that a source gives for the making
  // The years are hearsay: they teach how values come and go, and no answer is scored on them.
  bool hearsay = false;
  // The piece was in a collection, a picture or a shop by then: a loose upper limit.
  std::optional<Year> latest;
  std::optional<int> maker;        // a named hand; an unrecorded one is nothing here
  double weight = 1;               // of its evidence, 0 to 1
  std::vector<StyleValue> values;  // one for each character
};

// "This fitting from about 1946 to about 1958, says SOURCE": a prior shape of a term's curve.
struct StatedWindow {
  std::size_t character = 0;
  int term = 0;
  YearSpan span;
  double reliability = 0.7;  // 0 to 1
};

struct StyleTable {
  std::vector<StyleCharacter> characters;
  std::vector<StylePiece> pieces;
  std::vector<StatedWindow> windows;
};

// A broken table (a missing value column, unsorted terms, an unknown term, a number <= 0, a
// weight outside 0 to 1) is the program's fault: BrokenPromise.
void check(const StyleTable& table);

}  // namespace backmark::evidence
