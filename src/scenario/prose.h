// What the demo's author writes of a piece: opinion and how it is made, from what can be seen.
#pragma once

#include <string>
#include <vector>

#include "scenario/scenario.h"

namespace backmark::scenario {

// One text a piece, in the order of works: 300 to 1,200 characters for leads, one to three
// sentences for other picks, empty for what is not picked. Looks at nothing that is hidden.
std::vector<std::string> all_prose(const Scenario& scenario);

}  // namespace backmark::scenario
