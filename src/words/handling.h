// How to touch and pack a piece, from what it is made of.
#pragma once

#include <string>
#include <vector>

#include "model/show.h"

namespace backmark::words {

// One rule: a material that has any of these words, and what to mind. Common practice, no
// source, but for the residues, which every handbook of old organic collections warns of.
struct HandlingRule {
  std::vector<std::string_view> materials;
  std::string_view advice;
};
const std::vector<HandlingRule>& handling_rules();

// "Silver: no rubber, felt or newsprint. Soft metal: nothing may press on it." Each rule once,
// in the order of the table; empty if none applies. Says nothing that only some may know.
std::string handling_text(const model::Show& show, model::Id<model::Piece> piece);

}  // namespace backmark::words
