// Shared by the readers of lists of works; for the bodies of this room only.
#pragma once

#include <set>
#include <string>

#include "exchange/bibliography.h"

namespace backmark::exchange {

// Keeps the work, or the fault that stands against it.
void keep(Bibliography& all,
          std::set<std::string>& keys,
          model::Reference one,
          const std::string& where);

}  // namespace backmark::exchange
