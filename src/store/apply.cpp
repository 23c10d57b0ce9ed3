// Writing a change: the book, the words, the records, the search index; one transaction.
// Inside it a Problem is thrown, so that the transaction unwinds; apply() hands it back as a
// value.
#include <optional>
#include <set>
#include <sqlite3.h>

#include "base/text.h"
#include "store/database.h"
#include "store/inside.h"
#include "store/meanwhile.h"
#include "store/references.h"
#include "store/rows.h"
#include "store/search_index.h"

namespace backmark::store {

namespace {

using model::Change;

struct Writer {
  SQLite::Database& database;
  const Change& change;
  std::int64_t position;
  SQLite::Statement line;          // of the book
  std::set<std::int32_t> touched;  // pieces whose search entry is to be made anew
  Things things;
};

template <class T>
Problem gone(std::int32_t id) {
  return {Fault::not_found,
          fmt::format("record {} of kind {} does not hold any more", id, table<T>), "",
          "load the show again and look at its history"};
}

template <class T>
void touch(Writer& writer, const T& row) {
  if (const auto piece = piece_of(row)) {
    writer.touched.insert(piece.value);
    writer.things.add(piece.value, thing_of(row));
  }
}

// Runs a statement that writes `row`. A number or key that is taken is said by name.
template <class T>
void put_row(SQLite::Statement& statement, const T& row) {
  try {
    if (statement.exec() != 1) {
      throw gone<T>(row.id.value);
    }
  } catch (const SQLite::Exception& error) {
    if (unique_column<T>().empty() ||
        error.getExtendedErrorCode() != SQLITE_CONSTRAINT_UNIQUE) {
      throw;
    }
    throw Problem{Fault::conflict,
                  fmt::format("the {} of a {}, \"{}\", is in the show already",
                              unique_column<T>(), table<T>, unique_text(row)),
                  "", "give it another; nothing was changed"};
  }
  statement.reset();
}

// Reads and ends records of one kind.
template <class T>
class Holding {
 public:
  explicit Holding(Writer& writer)
      : read_(writer.database,
              fmt::format("SELECT {} FROM {} WHERE id = ? AND ended IS NULL",
                          columns<T>("{}"),
                          table<T>)),
        end_(writer.database,
             fmt::format("UPDATE {} SET ended = {} WHERE id = ? AND ended IS NULL",
                         table<T>,
                         writer.position)) {}

  std::optional<T> read(std::int32_t id) {
    read_.bind(1, id);
    std::optional<T> row;
    if (read_.executeStep()) {
      read_row(read_, row.emplace());
    }
    read_.reset();
    return row;
  }

  void end(std::int32_t id) {
    end_.bind(1, id);
    if (end_.exec() != 1) {
      throw gone<T>(id);
    }
    end_.reset();
  }

 private:
  SQLite::Statement read_;
  SQLite::Statement end_;
};

template <class T>
Json book_json(const Writer& writer, const T& row) {
  return to_json(row, [&](model::Word word) { return writer.change.text(word); });
}

template <class T>
void write_line(Writer& writer, std::string_view what, const T& row, const Json& detail) {
  writer.line.bind(1, writer.position);
  writer.line.bind(2, std::string(what));
  writer.line.bind(3, std::string(table<T>));
  writer.line.bind(4, row.id.value);
  writer.line.bind(5, piece_of(row).value);
  writer.line.bind(6, dumped(detail));
  writer.line.exec();
  writer.line.reset();
  touch(writer, row);
  writer.things.add_record(row.id.value);
}

template <class T>
void withdraw_from(Writer& writer, std::vector<const model::Withdrawal*>& left) {
  if (left.empty()) {
    return;
  }
  Holding<T> holding(writer);
  std::erase_if(left, [&](const model::Withdrawal* withdrawal) {
    const std::optional<T> was = holding.read(withdrawal->id);
    if (!was) {
      return false;
    }
    holding.end(withdrawal->id);
    write_line(writer, "withdrawn", *was,
               {{"was", book_json(writer, *was)}, {"reason", withdrawal->reason}});
    return true;
  });
}

void withdraw_all(Writer& writer) {
  std::vector<const model::Withdrawal*> left;
  for (const model::Withdrawal& withdrawal : writer.change.withdrawn()) {
    left.push_back(&withdrawal);
  }
  each_kind([&](auto kind) { withdraw_from<typename decltype(kind)::type>(writer, left); });
  if (!left.empty()) {
    throw Problem{Fault::not_found,
                  fmt::format("record {} does not hold any more", left.front()->id), "",
                  "load the show again and look at its history"};
  }
}

// Gives up the numbers or keys of rows that are about to be written anew, so that two records
// can change places; no number begins with this control character.
template <class T>
void free_keys(Writer& writer, const std::vector<T>& rows) {
  if constexpr (!unique_column<T>().empty()) {
    SQLite::Statement statement(
        writer.database,
        fmt::format("UPDATE {} SET {} = char(1) || id WHERE id = ? AND ended IS NULL", table<T>,
                    unique_column<T>()));
    for (const T& row : rows) {
      statement.bind(1, row.id.value);
      statement.exec();
      statement.reset();
    }
  }
}

template <class T>
void book_replaced(Writer& writer, const std::vector<T>& rows) {
  Holding<T> holding(writer);
  for (const T& row : rows) {
    const std::optional<T> was = holding.read(row.id.value);
    if (!was) {
      throw gone<T>(row.id.value);
    }
    const Json detail = {{"was", book_json(writer, *was)}, {"is", book_json(writer, row)}};
    write_line(writer, "replaced", row, detail);
    if (piece_of(*was) != piece_of(row)) {
      write_line(writer, "replaced", *was, detail);
    }
  }
}

template <class T>
void replace_rows(Writer& writer, const std::vector<T>& rows) {
  if (rows.empty()) {
    return;
  }
  if constexpr (is_testimony<T>) {
    throw Problem{
        Fault::refused,
        fmt::format("{} {} is never overwritten", table<T> == "claim" ? "a" : "an", table<T>),
        "", "supersede or withdraw it"};
  } else {
    book_replaced(writer, rows);
    free_keys(writer, rows);
    SQLite::Statement statement(writer.database,
                                fmt::format("UPDATE {} SET {} WHERE id = ? AND ended IS NULL",
                                            table<T>, columns<T>("{} = ?")));
    for (const T& row : rows) {
      const int at = bind_row(statement, row);
      statement.bind(at, row.id.value);
      put_row(statement, row);
    }
  }
}

template <class T>
void add_rows(Writer& writer, const std::vector<T>& rows) {
  if (rows.empty()) {
    return;
  }
  Holding<T> holding(writer);
  SQLite::Statement statement(
      writer.database, fmt::format("INSERT INTO {} ({}, since) VALUES ({}, {})", table<T>,
                                   columns<T>("{}"), columns<T>("?"), writer.position));
  for (const T& row : rows) {
    if constexpr (requires { row.supersedes; }) {
      if (row.supersedes) {
        holding.end(row.supersedes.value);
      }
    }
    bind_row(statement, row);
    put_row(statement, row);
    touch(writer, row);
  }
}

void add_words(Writer& writer) {
  SQLite::Statement statement(writer.database, "INSERT INTO word (id, text) VALUES (?, ?)");
  std::int64_t id = writer.change.first_new_word();
  for (const std::string& text : writer.change.new_words()) {
    statement.bind(1, id++);
    statement.bindNoCopy(2, text);
    statement.exec();
    statement.reset();
  }
}

void write_steps_back(Writer& writer) {
  if (writer.change.undoes() != 0) {
    SQLite::Statement step(writer.database, "INSERT INTO undone VALUES (?, ?)");
    step.bind(1, writer.position);
    step.bind(2, writer.change.undoes());
    step.exec();
  }
  SQLite::Statement statement(writer.database, "INSERT INTO restored VALUES (?, ?)");
  for (const model::Restored& restored : writer.change.restored()) {
    statement.bind(1, restored.id);
    statement.bind(2, restored.was);
    statement.exec();
    statement.reset();
  }
}

// How many of each kind.
Json counts(const model::Records& records) {
  Json json = Json::object();
  const auto count = [&](const auto& rows) {
    if (!rows.empty()) {
      using T = typename std::decay_t<decltype(rows)>::value_type;
      json[std::string(table<T>)] = rows.size();
    }
  };
  std::apply([&](const auto&... rows) { (count(rows), ...); }, records);
  return json;
}

void write_book(Writer& writer, const std::string& who, std::int64_t at) {
  SQLite::Statement statement(
      writer.database,
      "INSERT INTO book (position, at, who, operation, summary, detail) "
      "VALUES (?, ?, ?, ?, ?, ?)");
  statement.bind(1, writer.position);
  statement.bind(2, at);
  statement.bind(3, who);
  statement.bind(4, writer.change.operation());
  statement.bind(5, writer.change.summary());
  statement.bind(6, dumped({{"added", counts(writer.change.added())}}));
  statement.exec();
}

void check_position(SQLite::Database& database, const Change& change) {
  const std::int64_t now =
      database.execAndGet("SELECT coalesce(max(position), 0) FROM book").getInt64();
  if (now != change.based_on()) {
    throw Problem{Fault::conflict, "the show was changed by somebody else meanwhile", "",
                  "do it once more; nothing was changed"};
  }
}

// A maker's new name is found at his pieces too.
void touch_works(Writer& writer) {
  SQLite::Statement works(writer.database,
                          "SELECT subject FROM claim WHERE about = 0 AND maker = ? "
                          "AND ended IS NULL");
  for (const auto& maker : std::get<std::vector<model::Maker>>(writer.change.replaced())) {
    works.bind(1, maker.id.value);
    while (works.executeStep()) {
      writer.touched.insert(works.getColumn(0).getInt());
    }
    works.reset();
  }
}

void write_all(SQLite::Database& database,
               const Change& change,
               const Expectation& expectation,
               const std::string& who,
               std::int64_t at) {
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  check_position(database, change);
  keep_request(database, expectation.once, change.based_on() + 1);
  Writer writer{database,
                change,
                change.based_on() + 1,
                SQLite::Statement(database, "INSERT INTO book_line VALUES (?, ?, ?, ?, ?, ?)"),
                {},
                {}};
  write_book(writer, who, at);
  add_words(writer);
  withdraw_all(writer);
  std::apply([&](const auto&... rows) { (replace_rows(writer, rows), ...); },
             change.replaced());
  std::apply([&](const auto&... rows) { (add_rows(writer, rows), ...); }, change.added());
  if (const auto problem = dangling_after(database, change)) {
    throw *problem;
  }
  if (expectation.seen) {
    check_nobody_else(database, writer.things, *expectation.seen, writer.position);
  }
  writer.things.write(database, writer.position);
  write_steps_back(writer);
  touch_works(writer);
  index_pieces(database, writer.touched);
  transaction.commit();
}

}  // namespace

Result<Done> Store::apply(const Change& change, const std::string& who, std::int64_t at) {
  if (change.empty()) {
    return Done{};
  }
  try {
    write_all(*inside_->database, change, inside_->expectation, who, at);
    if (inside_->told) {
      inside_->told(change);
    }
    return Done{};
  } catch (const Problem& problem) {
    return problem;
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

}  // namespace backmark::store
