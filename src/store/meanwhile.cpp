#include "store/meanwhile.h"

#include "base/text.h"
#include "store/database.h"
#include "store/inside.h"

namespace backmark::store {

namespace {

// A change of more things than this (an import) is told by piece alone.
constexpr std::size_t most_things = 2000;
constexpr int numbers_told = 100;

std::string number_of(SQLite::Database& database, std::int32_t piece) {
  SQLite::Statement statement(database,
                              "SELECT number FROM piece WHERE id = ? ORDER BY ended IS NULL");
  statement.bind(1, piece);
  return statement.executeStep() ? statement.getColumn(0).getString() : std::string();
}

Problem changed_meanwhile(const std::string& number, const std::string& who) {
  return {Fault::conflict,
          number.empty() ? fmt::format("this was changed by {} meanwhile", who)
                         : fmt::format("{} was changed by {} meanwhile", number, who),
          number, "look at both and say which holds; nothing was changed"};
}

std::string writer_of(SQLite::Database& database, std::int64_t position) {
  SQLite::Statement statement(database, "SELECT who FROM book WHERE position = ?");
  statement.bind(1, position);
  return statement.executeStep() ? statement.getColumn(0).getString() : "somebody";
}

// The pieces of one change; `numbers` gets the first few, the answer is how many there are.
std::int64_t pieces_of(SQLite::Database& database,
                       std::int64_t position,
                       std::vector<std::string>& numbers) {
  SQLite::Statement count(database,
                          "SELECT count(DISTINCT piece) FROM book_thing WHERE position = ?");
  count.bind(1, position);
  count.executeStep();
  SQLite::Statement piece(database,
                          "SELECT DISTINCT piece FROM book_thing WHERE position = ? "
                          "ORDER BY piece LIMIT ?");
  piece.bind(1, position);
  piece.bind(2, numbers_told);
  while (piece.executeStep()) {
    numbers.push_back(number_of(database, piece.getColumn(0).getInt()));
  }
  return count.getColumn(0).getInt64();
}

}  // namespace

void Things::add(std::int32_t piece, std::string thing) {
  pieces_.insert(piece);
  if (of_pieces_.size() <= most_things) {
    of_pieces_.insert({piece, std::move(thing)});
  }
}

void Things::write(SQLite::Database& database, std::int64_t position) const {
  SQLite::Statement statement(database, "INSERT INTO book_thing VALUES (?, ?, ?)");
  const auto put = [&](std::int32_t piece, const std::string& thing) {
    statement.bind(1, position);
    statement.bind(2, piece);
    statement.bind(3, thing);
    statement.exec();
    statement.reset();
  };
  if (of_pieces_.size() > most_things) {
    for (const std::int32_t piece : pieces_) {
      put(piece, "*");
    }
    return;
  }
  for (const auto& [piece, thing] : of_pieces_) {
    put(piece, thing);
  }
}

void check_nobody_else(SQLite::Database& database,
                       const Things& things,
                       std::int64_t seen,
                       std::int64_t position) {
  SQLite::Statement thing(
      database,
      "SELECT max(position) FROM book_thing WHERE piece = ? AND position > ? "
      "AND position < ? AND thing IN ('*', ?)");
  for (const auto& [piece, name] : things.of_pieces()) {
    if (name.empty()) {
      continue;
    }
    thing.bind(1, piece);
    thing.bind(2, seen);
    thing.bind(3, position);
    thing.bind(4, name);
    if (thing.executeStep() && !thing.getColumn(0).isNull()) {
      throw changed_meanwhile(number_of(database, piece),
                              writer_of(database, thing.getColumn(0).getInt64()));
    }
    thing.reset();
  }
  SQLite::Statement line(database,
                         "SELECT position, piece FROM book_line WHERE position > ? "
                         "AND position < ? AND id = ? ORDER BY position DESC LIMIT 1");
  for (const std::int32_t record : things.records()) {
    line.bind(1, seen);
    line.bind(2, position);
    line.bind(3, record);
    if (line.executeStep()) {
      throw changed_meanwhile(number_of(database, line.getColumn(1).getInt()),
                              writer_of(database, line.getColumn(0).getInt64()));
    }
    line.reset();
  }
}

void keep_request(SQLite::Database& database, const std::string& once, std::int64_t position) {
  if (once.empty()) {
    return;
  }
  SQLite::Statement statement(database, "INSERT OR IGNORE INTO request VALUES (?, ?, '')");
  statement.bind(1, once);
  statement.bind(2, position);
  if (statement.exec() != 1) {
    throw Problem{Fault::conflict, "this request was done already", "once",
                  "load the show again; nothing was changed twice"};
  }
}

void Store::expect(Expectation expectation) {
  inside_->expectation = std::move(expectation);
}

Result<std::optional<Kept>> Store::kept(const std::string& once) {
  try {
    SQLite::Statement statement(*inside_->database,
                                "SELECT position, answer FROM request WHERE once = ?");
    statement.bind(1, once);
    if (!statement.executeStep()) {
      return std::optional<Kept>();
    }
    return std::optional<Kept>(
        Kept{statement.getColumn(0).getInt64(), statement.getColumn(1).getString()});
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

Result<Done> Store::keep_answer(const std::string& once, const std::string& answer) {
  try {
    // Not waited for until it lies on the disk: the change itself does, and without its answer a
    // request is still known to be done.
    inside_->database->exec("PRAGMA synchronous = NORMAL");
    SQLite::Statement statement(*inside_->database,
                                "UPDATE request SET answer = ? WHERE once = ?");
    statement.bind(1, answer);
    statement.bind(2, once);
    statement.exec();
    inside_->database->exec("PRAGMA synchronous = FULL");
    return Done{};
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

Result<Moment> Store::moment() {
  try {
    SQLite::Statement statement(*inside_->database,
                                "SELECT coalesce((SELECT max(position) FROM book), 0), "
                                "coalesce((SELECT max(id) FROM run), 0)");
    statement.executeStep();
    return Moment{statement.getColumn(0).getInt64(), statement.getColumn(1).getInt64()};
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

Result<std::vector<Moved>> Store::moved_after(std::int64_t position, std::size_t count) {
  try {
    SQLite::Transaction reading(*inside_->database);
    SQLite::Statement statement(*inside_->database,
                                "SELECT position, at, who, operation, summary FROM book "
                                "WHERE position > ? ORDER BY position LIMIT ?");
    statement.bind(1, position);
    statement.bind(2, static_cast<std::int64_t>(count));
    std::vector<Moved> all;
    while (statement.executeStep()) {
      Moved& moved = all.emplace_back(Moved{statement.getColumn(0).getInt64(),
                                            statement.getColumn(1).getInt64(),
                                            statement.getColumn(2).getString(),
                                            statement.getColumn(3).getString(),
                                            statement.getColumn(4).getString(),
                                            {},
                                            0});
      moved.pieces = pieces_of(*inside_->database, moved.position, moved.numbers);
    }
    return all;
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

}  // namespace backmark::store
