// A show with a change made to it, in memory.
#pragma once

#include "model/change.h"

namespace backmark::model {

// The show as the store gives it after applying `change`, which was begun from `before`: equal
// in every record, word, position and next id. What is
// not changed is shared with `before`; linear in the kinds of record that are.
Show changed(const Show& before, const Change& change);

}  // namespace backmark::model
