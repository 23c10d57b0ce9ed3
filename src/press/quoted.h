// Whether the words of others may be printed: the words of a source of the show need its leave,
// as pictures need theirs.
#pragma once

#include "model/show.h"
#include "press/prose.h"

namespace backmark::press {

// Quotations, the epigraph among them, that cite a source of the show by its key without leave
// to print on record: one finding a source. A work that is no source of the show was published,
// and what may be quoted from it is for the publisher to judge.
Problems quoted_without_leave(const Prose& prose, const model::Show& show);

}  // namespace backmark::press
