// Writing a change: checks, the book, the words, the records, the search index; one
// transaction. Inside it a Problem is thrown, so that the transaction unwinds; apply() hands it
// back as a value.
#include <set>
#include <sqlite3.h>

#include "base/text.h"
#include "store/database.h"
#include "store/inside.h"

namespace backmark::store {

namespace {

using model::Change;

struct Writer {
  SQLite::Database& database;
  const Change& change;
  std::int64_t position;
  Json detail = Json::object();
  std::set<std::int32_t> touched;  // pieces whose search entry is to be made anew
};

template <class T>
std::string row_words() {
  if constexpr (std::is_same_v<T, model::Piece>) {
    return "piece number";
  } else {
    return std::string(table<T>) + " key";
  }
}

template <class T>
Json to_json(const T& row, const Change& change) {
  Json json = Json::object();
  fields_of(row, [&](std::string_view name, const auto& member) {
    put_member(json, name, member, [&](model::Word word) { return change.text(word); });
  });
  return json;
}

template <class T>
void note_touched(Writer& writer, const T& row) {
  if constexpr (std::is_same_v<T, model::Piece>) {
    writer.touched.insert(row.id.value);
  } else if constexpr (requires { row.piece; }) {
    writer.touched.insert(row.piece.value);
  }
}

void end_record(Writer& writer, std::string_view name, std::int32_t id) {
  SQLite::Statement statement(
      writer.database,
      fmt::format("UPDATE {} SET ended = ? WHERE id = ? AND ended IS NULL", name));
  statement.bind(1, writer.position);
  statement.bind(2, id);
  if (statement.exec() != 1) {
    throw Problem{Fault::not_found,
                  fmt::format("record {} of kind {} does not hold any more", id, name), "",
                  "load the show again and look at its history"};
  }
}

template <class T>
std::string insert_text() {
  std::vector<std::string> columns;
  std::vector<std::string> marks;
  const T row{};
  fields_of(row, [&](std::string_view name, const auto&) {
    columns.push_back(fmt::format("\"{}\"", name));
    marks.emplace_back("?");
  });
  return fmt::format("INSERT INTO {} ({}, since) VALUES ({}, ?)", table<T>, join(columns, ","),
                     join(marks, ","));
}

template <class T>
std::string update_text() {
  std::vector<std::string> columns;
  const T row{};
  fields_of(row, [&](std::string_view name, const auto&) {
    columns.push_back(fmt::format("\"{}\" = ?", name));
  });
  return fmt::format("UPDATE {} SET {} WHERE id = ? AND ended IS NULL", table<T>,
                     join(columns, ","));
}

template <class T>
int bind_row(SQLite::Statement& statement, const T& row) {
  int at = 1;
  fields_of(
      row, [&](std::string_view, const auto& member) { bind_member(statement, at++, member); });
  return at;
}

template <class T>
void add_rows(Writer& writer, const std::vector<T>& rows) {
  if (rows.empty()) {
    return;
  }
  SQLite::Statement statement(writer.database, insert_text<T>());
  for (const T& row : rows) {
    if constexpr (requires { row.supersedes; }) {
      if (row.supersedes) {
        end_record(writer, table<T>, row.supersedes.value);
      }
    }
    const int at = bind_row(statement, row);
    statement.bind(at, writer.position);
    statement.exec();
    statement.reset();
    note_touched(writer, row);
  }
}

// The rows as the tables hold them now, for the book.
template <class T>
Json old_row(Writer& writer, std::int32_t id) {
  SQLite::Statement statement(writer.database,
                              fmt::format("SELECT * FROM {} WHERE id = ?", table<T>));
  statement.bind(1, id);
  Json json = Json::object();
  if (statement.executeStep()) {
    for (int column = 0; column < statement.getColumnCount(); ++column) {
      const SQLite::Column value = statement.getColumn(column);
      if (value.isInteger()) {
        json[value.getName()] = value.getInt64();
      } else if (!value.isNull()) {
        json[value.getName()] = value.getString();
      }
    }
  }
  return json;
}

template <class T>
void replace_rows(Writer& writer, const std::vector<T>& rows) {
  if (rows.empty()) {
    return;
  }
  if constexpr (is_testimony<T>) {
    throw Problem{Fault::refused, fmt::format("a {} is never overwritten", table<T>), "",
                  "supersede or withdraw it"};
  } else {
    Json& list = writer.detail["replaced"][std::string(table<T>)];
    SQLite::Statement statement(writer.database, update_text<T>());
    for (const T& row : rows) {
      list.push_back(
          {{"was", old_row<T>(writer, row.id.value)}, {"is", to_json(row, writer.change)}});
      const int at = bind_row(statement, row);
      statement.bind(at, row.id.value);
      if (statement.exec() != 1) {
        throw Problem{
            Fault::not_found,
            fmt::format("record {} of kind {} does not hold any more", row.id.value, table<T>),
            "", "load the show again"};
      }
      statement.reset();
      note_touched(writer, row);
    }
  }
}

template <class T>
void book_added(Writer& writer, const std::vector<T>& rows) {
  if (rows.empty()) {
    return;
  }
  Json& list = writer.detail["added"][std::string(table<T>)];
  for (const T& row : rows) {
    list.push_back(to_json(row, writer.change));
  }
}

template <class T>
bool withdraw_from(Writer& writer, const model::Withdrawal& gone) {
  SQLite::Statement holds(
      writer.database,
      fmt::format("SELECT 1 FROM {} WHERE id = ? AND ended IS NULL", table<T>));
  holds.bind(1, gone.id);
  if (!holds.executeStep()) {
    return false;
  }
  Json was = old_row<T>(writer, gone.id);
  if (was.contains("piece")) {
    writer.touched.insert(was["piece"].template get<std::int32_t>());
  }
  writer.detail["withdrawn"].push_back(
      {{"kind", std::string(table<T>)}, {"was", std::move(was)}, {"reason", gone.reason}});
  end_record(writer, table<T>, gone.id);
  return true;
}

void withdraw_all(Writer& writer) {
  for (const model::Withdrawal& gone : writer.change.withdrawn()) {
    const bool found = std::apply(
        [&](const auto&... rows) {
          return (
              withdraw_from<typename std::decay_t<decltype(rows)>::value_type>(writer, gone) ||
              ...);
        },
        model::Records{});
    if (!found) {
      throw Problem{Fault::not_found, fmt::format("record {} does not hold any more", gone.id),
                    "", "load the show again"};
    }
  }
}

void add_words(Writer& writer) {
  SQLite::Statement statement(writer.database, "INSERT INTO word (id, text) VALUES (?, ?)");
  std::int64_t id = writer.change.first_new_word();
  for (const std::string& text : writer.change.new_words()) {
    statement.bind(1, id++);
    statement.bind(2, text);
    statement.exec();
    statement.reset();
  }
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
  statement.bind(6, writer.detail.dump());
  statement.exec();
}

void index_pieces(Writer& writer) {
  SQLite::Statement drop(writer.database, "DELETE FROM found WHERE rowid = ?");
  SQLite::Statement make(writer.database,
                         "INSERT INTO found (rowid, number, title, marks, notes, words) SELECT "
                         "p.id, p.number, p.title, "
                         "coalesce((SELECT group_concat(text, ' ') FROM mark WHERE piece = "
                         "p.id AND ended IS NULL), ''), "
                         "coalesce((SELECT group_concat(text, ' ') FROM note WHERE piece = "
                         "p.id AND ended IS NULL), ''), "
                         "coalesce((SELECT group_concat(w.text, ' ') FROM observation o JOIN "
                         "word w ON w.id = o.value "
                         "WHERE o.piece = p.id AND o.ended IS NULL), '') "
                         "FROM piece p WHERE p.id = ? AND p.ended IS NULL");
  const bool was_empty =
      writer.database.execAndGet("SELECT count(*) = 0 FROM (SELECT 1 FROM found LIMIT 1)")
          .getInt() != 0;
  for (const std::int32_t piece : writer.touched) {
    if (!was_empty) {
      drop.bind(1, piece);
      drop.exec();
      drop.reset();
    }
    make.bind(1, piece);
    make.exec();
    make.reset();
  }
}

void check_position(SQLite::Database& database, const Change& change) {
  const std::int64_t now =
      database.execAndGet("SELECT coalesce(max(position), 0) FROM book").getInt64();
  if (now != change.based_on()) {
    throw Problem{Fault::conflict, "the show was changed by somebody else meanwhile", "",
                  "do it once more; nothing was changed"};
  }
}

void write_all(SQLite::Database& database,
               const Change& change,
               const std::string& who,
               std::int64_t at) {
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  check_position(database, change);
  Writer writer{database, change, change.based_on() + 1, Json::object(), {}};
  add_words(writer);
  std::apply([&](const auto&... rows) { (book_added(writer, rows), ...); }, change.added());
  std::apply([&](const auto&... rows) { (replace_rows(writer, rows), ...); },
             change.replaced());
  withdraw_all(writer);
  write_book(writer, who, at);
  std::apply([&](const auto&... rows) { (add_rows(writer, rows), ...); }, change.added());
  index_pieces(writer);
  transaction.commit();
}

Problem taken(const SQLite::Exception& error) {
  return {Fault::conflict,
          std::string("a number or key is in the show already (") + error.what() + ")", "",
          "give it another; nothing was changed"};
}

}  // namespace

Result<Done> Store::apply(const Change& change, const std::string& who, std::int64_t at) {
  if (change.empty()) {
    return Done{};
  }
  try {
    write_all(*inside_->database, change, who, at);
    return Done{};
  } catch (const Problem& problem) {
    return problem;
  } catch (const SQLite::Exception& error) {
    if ((error.getErrorCode() & 0xFF) == SQLITE_CONSTRAINT) {
      return taken(error);
    }
    return in_words(error, inside_->folder);
  }
}

}  // namespace backmark::store
