// The operations as TypeScript, for the pages: web/src/api.ts. A test holds the file to this
// and writes it anew when BACKMARK_KEEP is set.
#pragma once

#include <string>

namespace backmark::web {

std::string api_types();

}  // namespace backmark::web
