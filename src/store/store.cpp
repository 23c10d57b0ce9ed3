#include "store/store.h"

#include "base/text.h"
#include "store/database.h"
#include "store/inside.h"

namespace backmark::store {

namespace {

// Columns as "id", "piece", ... and as many question marks.
template <class T>
std::string select_text() {
  std::vector<std::string> columns;
  const T row{};
  fields_of(row, [&](std::string_view name, const auto&) {
    columns.push_back(fmt::format("\"{}\"", name));
  });
  return fmt::format("SELECT {} FROM {} WHERE ended IS NULL ORDER BY id", join(columns, ","),
                     table<T>);
}

template <class T>
void load_rows(SQLite::Database& database, std::vector<T>& rows) {
  SQLite::Statement statement(database, select_text<T>());
  while (statement.executeStep()) {
    int column = 0;
    fields_of(rows.emplace_back(), [&](std::string_view, auto& member) {
      read_member(statement.getColumn(column++), member);
    });
  }
}

void load_words(SQLite::Database& database, model::Pool& pool) {
  pool.reserve(
      static_cast<std::size_t>(database.execAndGet("SELECT count(*) FROM word").getInt64()));
  SQLite::Statement statement(database, "SELECT id, text FROM word ORDER BY id");
  while (statement.executeStep()) {
    const model::Word word = pool.take(statement.getColumn(1).getText(""));
    if (word.value != static_cast<std::uint32_t>(statement.getColumn(0).getInt64())) {
      throw BrokenPromise("the words of the show are out of order");
    }
  }
}

std::int32_t first_free_id(SQLite::Database& database) {
  std::int64_t highest = 0;
  std::apply(
      [&](const auto&... rows) {
        const auto look = [&](std::string_view name) {
          const auto sql = fmt::format("SELECT coalesce(max(id), 0) FROM {}", name);
          highest = std::max(highest, database.execAndGet(sql).getInt64());
        };
        (look(table<typename std::decay_t<decltype(rows)>::value_type>), ...);
      },
      model::Records{});
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
    load_words(database, show.pool);
    std::apply([&](auto&... rows) { (load_rows(database, rows), ...); }, show.records);
    show.next_id = first_free_id(database);
    show.settle();
    return show;
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

Result<std::vector<Entry>> Store::book(std::size_t count, model::Id<model::Piece> piece) {
  try {
    SQLite::Statement statement(
        *inside_->database,
        "SELECT position, at, who, operation, summary, detail FROM book "
        "WHERE ?1 = 0 OR instr(detail, ?2) > 0 OR instr(detail, ?3) > 0 "
        "ORDER BY position DESC LIMIT ?4");
    statement.bind(1, piece.value);
    statement.bind(2, fmt::format("\"piece\":{},", piece.value));
    statement.bind(3, fmt::format("\"subject\":{},", piece.value));
    statement.bind(4, static_cast<std::int64_t>(count));
    std::vector<Entry> entries;
    while (statement.executeStep()) {
      entries.push_back({statement.getColumn(0).getInt64(), statement.getColumn(1).getInt64(),
                         statement.getColumn(2).getString(), statement.getColumn(3).getString(),
                         statement.getColumn(4).getString(),
                         statement.getColumn(5).getString()});
    }
    return entries;
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

Result<std::vector<Hit>> Store::search(std::string_view text, std::size_t count) {
  std::vector<std::string> quoted;
  for (const auto part : split(text, " ")) {
    if (!trim(part).empty()) {
      quoted.push_back("\"" + replace_all(std::string(trim(part)), "\"", "\"\"") + "\"");
    }
  }
  if (quoted.empty()) {
    return Problem{Fault::bad_input, "there is nothing to look for", "",
                   "give a word or a number"};
  }
  try {
    SQLite::Statement statement(
        *inside_->database,
        "SELECT rowid, number, snippet(found, -1, '', '', ' ... ', 10) FROM found "
        "WHERE found MATCH ? ORDER BY rank, number LIMIT ?");
    statement.bind(1, join(quoted, " "));
    statement.bind(2, static_cast<std::int64_t>(count));
    std::vector<Hit> hits;
    while (statement.executeStep()) {
      hits.push_back({{statement.getColumn(0).getInt()},
                      statement.getColumn(1).getString(),
                      statement.getColumn(2).getString()});
    }
    return hits;
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

}  // namespace backmark::store
