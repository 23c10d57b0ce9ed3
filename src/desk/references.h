// The works that the texts of a show may cite.
#pragma once

#include <vector>

#include "model/reference.h"
#include "press/job.h"

namespace backmark::desk {

// Of every essays/*.json and *.bib, in the order of the files; a key that comes again in a
// later file is a fault and the first stays. Faults are told in `faults`, the rest is there.
std::vector<model::Reference> references_in(const std::vector<press::TextFile>& texts,
                                            Problems& faults);

}  // namespace backmark::desk
