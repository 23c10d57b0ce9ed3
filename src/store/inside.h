// What a Store holds. For the bodies of this room only.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include "store/store.h"

namespace backmark::store {

struct Store::Inside {
  std::unique_ptr<SQLite::Database> database;
  Path folder;
  Expectation expectation;
  std::function<void(const model::Change&)> told;
};

// The entry of a row with the columns position, at, who, operation, summary and detail.
Entry read_entry(SQLite::Statement& statement);

}  // namespace backmark::store
