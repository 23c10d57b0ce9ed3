// From laid-out pages to a PDF.
#pragma once

#include "press/book/layout.h"

namespace backmark::press::book {

// Draws all pages and finishes the PDF. Each photograph is decoded once for each page it stands
// on and brought down to `print_ppi` at most. Missing and broken photographs become findings
// and leave a marked box.
inline constexpr double print_ppi = 300;
Result<std::string> render(Layout& book);

}  // namespace backmark::press::book
