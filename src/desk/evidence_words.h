// What one piece of evidence did to the answer, in words.
#pragma once

#include <string>

#include "model/belief.h"

namespace backmark::desk {

// "narrows by 2 years; 1 year later; settles the maker", "moves little", "does not fit; set
// aside".
std::string moved_words(const model::EvidenceLine& line);

}  // namespace backmark::desk
