#include "store/ahead.h"

#include <SQLiteCpp/SQLiteCpp.h>

namespace backmark::store {

Ahead::Ahead(const Path& folder) {
  try {
    auto database = std::make_unique<SQLite::Database>((folder / "show.db").string(),
                                                       SQLite::OPEN_READWRITE);
    const std::string mode = database->execAndGet("PRAGMA journal_mode = WAL").getString();
    if (mode == "wal") {
      // The first look makes the two files, which stay for as long as one connection has
      // looked.
      database->execAndGet("SELECT count(*) FROM sqlite_master");
      database_ = std::move(database);
    }
  } catch (const SQLite::Exception&) {
    database_ = nullptr;
  }
}

Ahead::~Ahead() {
  try {
    if (database_ != nullptr) {
      database_->exec("PRAGMA journal_mode = DELETE");
    }
  } catch (const SQLite::Exception&) {
    // Another program still has it open; whoever closes it last writes the rest into show.db.
    database_ = nullptr;
  }
}

}  // namespace backmark::store
