// Everything a person can ask for. One line each; the doors follow from this list.
#pragma once

#include <vector>

#include "desk/operation.h"

namespace backmark::desk {

const std::vector<Operation>& operations();

}  // namespace backmark::desk
