#include "store/store.h"

#include <limits>

#include "base/text.h"
#include "store/database.h"
#include "store/inside.h"
#include "store/references.h"
#include "store/rows.h"

namespace backmark::store {

namespace {

template <class T>
void load_rows(SQLite::Database& database, std::vector<T>& rows) {
  SQLite::Statement statement(database,
                              fmt::format("SELECT {} FROM {} WHERE ended IS NULL ORDER BY id",
                                          columns<T>("{}"), table<T>));
  while (statement.executeStep()) {
    read_row(statement, rows.emplace_back());
  }
}

Problem damaged(std::string what) {
  return {Fault::io, "the show's file is damaged: " + std::move(what), "",
          "go back to a copy; nothing was changed"};
}

Result<Done> load_words(SQLite::Database& database, model::Pool& pool) {
  pool.reserve(
      static_cast<std::size_t>(database.execAndGet("SELECT count(*) FROM word").getInt64()));
  SQLite::Statement statement(database, "SELECT id, text FROM word ORDER BY id");
  while (statement.executeStep()) {
    const model::Word word = pool.take(statement.getColumn(1).getString());
    if (word.value != static_cast<std::uint32_t>(statement.getColumn(0).getInt64())) {
      return damaged("its words are out of order");
    }
  }
  return Done{};
}

Result<std::int32_t> first_free_id(SQLite::Database& database) {
  std::int64_t highest = 0;
  each_kind([&](auto kind) {
    const auto sql = fmt::format("SELECT coalesce(max(id), 0) FROM {}",
                                 table<typename decltype(kind)::type>);
    highest = std::max(highest, database.execAndGet(sql).getInt64());
  });
  if (highest >= std::numeric_limits<std::int32_t>::max()) {
    return damaged(fmt::format("it has a record {}", highest));
  }
  return static_cast<std::int32_t>(highest + 1);
}

bool is_free(const Path& folder) {
  std::error_code error;
  return !std::filesystem::exists(folder, error) ||
         (std::filesystem::is_directory(folder, error) &&
          std::filesystem::is_empty(folder, error));
}

}  // namespace

Result<Done> create(const Path& folder) {
  std::error_code error;
  if (std::filesystem::exists(folder / "show.db", error)) {
    return Problem{Fault::conflict, "there is a show here already", folder.string(),
                   "name another folder"};
  }
  if (!is_free(folder)) {
    return Problem{Fault::conflict, "this folder holds other things", folder.string(),
                   "name a folder that is empty or does not exist yet"};
  }
  std::filesystem::create_directories(folder / "photos", error);
  std::filesystem::create_directories(folder / "prints", error);
  if (error) {
    return Problem{Fault::io, "the folder cannot be made: " + error.message(), folder.string(),
                   "check its rights"};
  }
  return make_database(folder);
}

Store::Store(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Store::Store(Store&&) noexcept = default;
Store& Store::operator=(Store&&) noexcept = default;
Store::~Store() = default;

const Path& Store::folder() const {
  return inside_->folder;
}

void Store::tell(std::function<void(const model::Change&)> applied) {
  inside_->told = std::move(applied);
}

Result<Store> Store::open(const Path& folder, Access access) {
  auto database = open_database(folder, access);
  if (!database) {
    return database.problem();
  }
  auto inside = std::make_unique<Inside>();
  inside->database = std::move(*database);
  inside->folder = folder;
  return Store(std::move(inside));
}

Result<model::Show> Store::load() {
  try {
    SQLite::Database& database = *inside_->database;
    SQLite::Transaction reading(database);  // one moment of the show, whatever others do
    model::Show show;
    show.position =
        database.execAndGet("SELECT coalesce(max(position), 0) FROM book").getInt64();
    const auto next_id = first_free_id(database);
    if (!next_id) {
      return next_id.problem();
    }
    show.next_id = *next_id;
    if (const auto words = load_words(database, show.pool); !words) {
      return words.problem();
    }
    model::Records records;
    std::apply([&](auto&... rows) { (load_rows(database, rows), ...); }, records);
    if (auto problem = dangling_in(records, show.pool)) {
      return *std::move(problem);
    }
    show.fill(std::move(records));
    show.settle();
    return show;
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

}  // namespace backmark::store
