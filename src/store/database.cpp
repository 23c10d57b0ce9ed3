#include "store/database.h"

#include <sqlite3.h>

#include "base/text.h"
#include "store/migrations.h"

namespace backmark::store {

namespace {

// "BkMk" in SQLite's application_id: tells a show from any other database.
constexpr int application_id = 0x426B4D6B;
constexpr int patience_ms = 5000;

int pragma(SQLite::Database& database, const std::string& name) {
  return database.execAndGet("PRAGMA " + name).getInt();
}

// From whatever version it finds: another program may have been quicker.
void migrate(SQLite::Database& database) {
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  const int from = pragma(database, "user_version");
  for (const Migration& step : migrations()) {
    if (step.number > from) {
      database.exec(step.sql);
    }
  }
  database.exec(fmt::format("PRAGMA user_version = {}", newest_version()));
  transaction.commit();
}

// The copy gets its name only when it is whole.
void keep_copy(SQLite::Database& database, const Path& folder, int version) {
  const Path copy = folder / fmt::format("show.db.before-{}", version + 1);
  Path part = copy;
  part += ".part";
  std::filesystem::remove(part);
  SQLite::Statement vacuum(database, "VACUUM INTO ?");
  vacuum.bind(1, part.string());
  vacuum.exec();
  std::filesystem::rename(part, copy);
}

Result<Done> bring_up_to_date(SQLite::Database& database, const Path& folder) {
  if (pragma(database, "application_id") != application_id) {
    return Problem{Fault::not_found, "show.db here is not a Backmark show", folder.string(),
                   "name the folder of a show, or start one with \"backmark new\""};
  }
  const int version = pragma(database, "user_version");
  if (version > newest_version()) {
    return Problem{
        Fault::refused,
        fmt::format("this show was made by a newer Backmark (version {} of the file; "
                    "this program knows up to {})",
                    version, newest_version()),
        folder.string(), "open it with that program; nothing was changed"};
  }
  if (version == newest_version()) {
    return Done{};
  }
  keep_copy(database, folder, version);
  migrate(database);
  return Done{};
}

// The library counts the memory it takes under one lock that all connections wait for; nobody
// here reads the count. Once, before the first connection.
void count_no_memory() {
  static const int once = sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0);
  (void)once;
}

void settings_of(SQLite::Database& database) {
  database.setBusyTimeout(patience_ms);
  // A show has a rollback journal, which keeps it one file that is safe to copy whenever no
  // program has it open, but while it is served (store/ahead.h). Full sync keeps it whole when
  // the power goes.
  database.exec("PRAGMA synchronous = FULL");
  database.exec("PRAGMA foreign_keys = ON");
}

}  // namespace

int newest_version() {
  return migrations().back().number;
}

Problem in_words(const SQLite::Exception& error, const Path& folder) {
  const std::string where = (folder / "show.db").string();
  switch (error.getErrorCode() & 0xFF) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {Fault::conflict, "the show is being changed by another program", where,
              "wait until it is done, or close it there"};
    case SQLITE_READONLY:
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
      return {Fault::io, "the show may not be written here", where,
              "check the rights of the folder and of show.db"};
    case SQLITE_NOTADB:
    case SQLITE_CORRUPT:
      return {Fault::io, "the show's file is damaged or is no show", where,
              "go back to a copy; a copy show.db.before-N may lie beside it"};
    case SQLITE_FULL:
      return {Fault::io, "the disk is full", where, "make room; nothing was changed"};
    default:
      return {Fault::io, std::string("the show cannot be used: ") + error.what(), where,
              "check the disk; nothing was changed"};
  }
}

Result<Done> make_database(const Path& folder) {
  try {
    SQLite::Database database((folder / "show.db").string(),
                              SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    settings_of(database);
    database.exec(fmt::format("PRAGMA application_id = {}", application_id));
    migrate(database);
    return Done{};
  } catch (const SQLite::Exception& error) {
    return in_words(error, folder);
  }
}

Result<std::unique_ptr<SQLite::Database>> open_database(const Path& folder, Access access) {
  std::error_code error;
  const Path file = folder / "show.db";
  if (!std::filesystem::exists(file, error)) {
    return Problem{Fault::not_found, "there is no show here", folder.string(),
                   "check the folder, or start a show with \"backmark new\""};
  }
  try {
    count_no_memory();
    auto database = std::make_unique<SQLite::Database>(file.string(), SQLite::OPEN_READWRITE);
    settings_of(*database);
    if (auto ready = bring_up_to_date(*database, folder); !ready) {
      return ready.problem();
    }
    if (access == Access::look) {
      database->exec("PRAGMA query_only = ON");
    }
    return database;
  } catch (const SQLite::Exception& fault) {
    return in_words(fault, folder);
  } catch (const std::filesystem::filesystem_error& fault) {
    return Problem{
        Fault::io, "no copy can be laid beside the older show: " + fault.code().message(),
        folder.string(), "check that the folder may be written; nothing was changed"};
  }
}

}  // namespace backmark::store
