// The terminal door.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "desk/operation.h"

namespace backmark::cli {

// Runs the command in `arguments` (without the program's own name). Results go to `out`,
// problems and progress to `err`. Gives the exit status: 0 well, 2 the user's input, 1 a fault
// of the program. `doors` are commands beside the operations: other ways into the house.
int run(const std::vector<std::string>& arguments,
        const desk::Surroundings& surroundings,
        const std::vector<desk::Operation>& doors,
        std::ostream& out,
        std::ostream& err);

}  // namespace backmark::cli
