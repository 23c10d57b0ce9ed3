// Marks by which a later fit sees what has changed in what is said.
#pragma once

#include <cstdint>

#include "evidence/gather.h"

namespace backmark::evidence {

// Of all that is said of one piece, by its place in the show: values as words, statements,
// hands, variants. Two pieces that say the same have the same mark.
std::uint64_t fingerprint_of_piece(const model::Show& show,
                                   const Gathered& gathered,
                                   std::size_t piece);

// Of all that is said of no single piece: makers, windows of use, lineages. What a source is
// worth stands in the marks of the pieces that it speaks of.
std::uint64_t fingerprint_of_frame(const model::Show& show, const Gathered& gathered);

}  // namespace backmark::evidence
