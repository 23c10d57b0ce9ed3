// Keeping the full-text index in step with the records. For the bodies of this room only.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>
#include <cstdint>
#include <set>

namespace backmark::store {

// Makes the entries of these pieces anew from the tables; inside the caller's transaction.
void index_pieces(SQLite::Database& database, const std::set<std::int32_t>& pieces);

}  // namespace backmark::store
