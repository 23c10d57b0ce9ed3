// Whether every record that a record names is there. For the bodies of this room only.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>
#include <optional>
#include <vector>

#include "base/result.h"
#include "model/change.h"
#include "model/show.h"

namespace backmark::store {

// The first of the records of a show (as read: each kind in the order of ids) that
// names a record which is not there or is of another kind, or a word that the pool has not.
// Problem: io, since only a damaged file holds such a thing. Linear in the records.
std::optional<Problem> dangling_in(const model::Records& records, const model::Pool& pool);

// The same of a change that has just been written, inside its transaction: what it added and
// replaced, and what still names a record it withdrew. Problems: not_found (a record names one
// that is not there), conflict (something withdrawn is still named).
std::optional<Problem> dangling_after(SQLite::Database& database, const model::Change& change);

// The part of it that is about what was withdrawn.
std::optional<Problem> withdrawn_still_named(SQLite::Database& database,
                                             const std::vector<model::Withdrawal>& withdrawn);

}  // namespace backmark::store
