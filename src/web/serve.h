// `backmark serve SHOW`.
#pragma once

#include "desk/operation.h"

namespace backmark::web {

// Serves until the program is told to stop; says the address on standard output first.
desk::Operation serve_show();

// `backmark passphrase SHOW ROLE`: sets what a device must know to be let in, read from
// standard input.
desk::Operation set_passphrase();

}  // namespace backmark::web
