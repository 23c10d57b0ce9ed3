// Text that goes into XML or HTML.
#pragma once

#include <string>

namespace backmark {

// For the text of an element: & < > are written as entities. Not enough for a value in quotes.
std::string escaped_markup(std::string text);

}  // namespace backmark
