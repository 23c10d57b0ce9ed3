// The formulas of the bench, by subject; formulas.cpp puts all behind each other.
#pragma once

#include "desk/formulas.h"

namespace backmark::desk {

std::vector<Formula> weighing_formulas();
std::vector<Formula> alloy_formulas();
std::vector<Formula> stone_formulas();  // light in stones, lines in ivory, units of weight

}  // namespace backmark::desk
