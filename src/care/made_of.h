// What the record says a piece is made of.
#pragma once

#include <string>
#include <vector>

#include "model/show.h"

namespace backmark::care {

// Whether a character says what a thing is made of, by the end of its key. Others have the same
// words in another sense: a motif "feather", a legend "JET WORKS", a backing of card that no
// light reaches.
bool says_material(const model::Character& character);

struct MadeOf {
  std::string part;   // kind of part; empty: the piece as a whole
  std::string value;  // "plaited leather", lower case
};
// In the order of the observations, each value of a part once.
std::vector<MadeOf> made_of(const model::Show& show, const model::Piece& piece);

}  // namespace backmark::care
