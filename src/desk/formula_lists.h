// The formulas of each subject; formulas.cpp puts them behind each other.
#pragma once

#include "desk/formulas.h"

namespace backmark::desk {

std::vector<Formula> light_formulas();
std::vector<Formula> lamp_formulas();
std::vector<Formula> air_formulas();
std::vector<Formula> buffer_formulas();
std::vector<Formula> load_formulas();
std::vector<Formula> schedule_formulas();
std::vector<Formula> legibility_formulas();
std::vector<Formula> access_formulas();
std::vector<Formula> book_formulas();

}  // namespace backmark::desk
