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

}  // namespace backmark::store
