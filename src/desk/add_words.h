// Records added by hand, from words written key=value. For the bodies add_*.cpp only.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/result.h"
#include "model/change.h"
#include "model/show.h"

namespace backmark::desk {

using Words = std::map<std::string, std::string>;

struct Added {
  model::Change change;
  std::string said;  // "Piece ES 400 is in the show."
};

// Problem: bad_input, a word that is not among those this kind takes, with the nearest.
Result<Done> only_words(const Words& words, const std::vector<std::string>& known);
// Empty if it is not given.
std::string word(const Words& words, const std::string& key);
// Problem: bad_input, naming the word.
Result<std::string> needed(const Words& words, const std::string& key, const std::string& fix);

// Problems: not_found, with the nearest.
Result<const model::Source*> named_source(const model::Show& show, const std::string& key);
Result<const model::Character*> named_character(const model::Show& show,
                                                const std::string& name);
// By name or key, in any case.
Result<const model::Maker*> named_maker(const model::Show& show, const std::string& name);

// A piece, maker, source or window, as an import of one row reads it. Problems: bad_input (a
// word or value not understood), conflict (it is there already).
Result<Added> add_listed(const model::Show& show, const std::string& kind, const Words& words);
// What a source says. Problems: bad_input, not_found.
Result<Added> add_claim(const model::Show& show, const Words& words, const std::string& who);
// Something that happened to a piece. Problems: bad_input, not_found.
Result<Added> add_event(const model::Show& show, const Words& words);
// A property to look for, or the order of its variants. Problems: bad_input, conflict,
// not_found.
Result<Added> add_character(const model::Show& show, const Words& words);
Result<Added> add_lineage(const model::Show& show, const Words& words);

}  // namespace backmark::desk
