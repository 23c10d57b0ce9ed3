// Letting devices of the same network in.
#pragma once

namespace backmark::web {

class Pairing {};

}  // namespace backmark::web
