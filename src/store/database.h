// Opening show.db and bringing it to the newest version. For the bodies of this room only.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>
#include <memory>

#include "base/file.h"
#include "base/result.h"
#include "store/store.h"

namespace backmark::store {

// The open database of the show in `folder`, at the newest version.
Result<std::unique_ptr<SQLite::Database>> open_database(const Path& folder, Access access);

// A new show.db of the newest version in `folder`, which exists.
Result<Done> make_database(const Path& folder);

// What SQLite said, in the curator's words.
Problem in_words(const SQLite::Exception& error, const Path& folder);

}  // namespace backmark::store
