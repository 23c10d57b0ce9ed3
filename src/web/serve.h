// `backmark serve SHOW`.
#pragma once

#include "desk/operation.h"

namespace backmark::web {

// Serves until the program is told to stop; says the address on standard output first.
desk::Operation serve_show();

}  // namespace backmark::web
