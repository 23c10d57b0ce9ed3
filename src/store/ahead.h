// A show that many read while one writes.
#pragma once

#include <memory>

#include "base/file.h"

namespace SQLite {
class Database;
}

namespace backmark::store {

// As long as it lives, whoever reads the show and the one who writes it do not wait for each
// other, in this program and beside it: a change goes first to show.db-wal beside show.db,
// which must be copied with it while the show is open. At the end the show is one file again;
// after a crash, the next time it was opened and closed. A folder that cannot carry this (some
// network drives) is left as it is. Let every other Store of the show be closed before it ends.
class Ahead {
 public:
  explicit Ahead(const Path& folder);
  ~Ahead();

 private:
  std::unique_ptr<SQLite::Database> database_;  // null: left as it is
};

}  // namespace backmark::store
