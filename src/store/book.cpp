// Reading the book of changes. What was added stands in the tables (since); what was replaced
// or withdrawn stands in book_line; what was superseded ended without a line.
#include <map>
#include <set>

#include "base/text.h"
#include "store/database.h"
#include "store/inside.h"
#include "store/rows.h"
#include "store/steps_back.h"

namespace backmark::store {

namespace {

constexpr int lines_shown = 200;  // of one entry, when the whole book is asked for

// Texts of words, without reading the whole pool.
class Words {
 public:
  explicit Words(SQLite::Database& database)
      : statement_(database, "SELECT text FROM word WHERE id = ?") {}
  std::string operator()(model::Word word) const {
    statement_.reset();
    statement_.bind(1, static_cast<std::int64_t>(word.value));
    return statement_.executeStep() ? statement_.getColumn(0).getString() : std::string();
  }

 private:
  mutable SQLite::Statement statement_;
};

// What each change did to one piece, by place in the book.
struct Lines {
  std::map<std::int64_t, Json> details;
  std::map<std::int32_t, Json>
      first;  // a replaced record as it was before the first replacement
  std::set<std::int32_t> withdrawn;
};

void put_line(Json& detail, SQLite::Statement& line) {
  Json item = {{"kind", line.getColumn(2).getString()}};
  item.update(Json::parse(line.getColumn(4).getText("{}")));
  detail[line.getColumn(1).getString()].push_back(std::move(item));
}

void read_lines(SQLite::Database& database, model::Id<model::Piece> piece, Lines& lines) {
  SQLite::Statement line(database,
                         "SELECT position, what, kind, id, detail FROM book_line "
                         "WHERE piece = ? ORDER BY position, rowid");
  line.bind(1, piece.value);
  while (line.executeStep()) {
    const std::int32_t id = line.getColumn(3).getInt();
    if (line.getColumn(1).getString() == "withdrawn") {
      lines.withdrawn.insert(id);
    } else {
      lines.first.try_emplace(id, Json::parse(line.getColumn(4).getText("{}")).at("was"));
    }
    put_line(lines.details[line.getColumn(0).getInt64()], line);
  }
}

template <class T>
void read_records(SQLite::Database& database,
                  model::Id<model::Piece> piece,
                  Words& words,
                  Lines& lines) {
  if constexpr (!of_piece_sql<T>().empty()) {
    const std::string kind(table<T>);
    SQLite::Statement statement(
        database, fmt::format("SELECT {}, since, ended FROM {} WHERE {} ORDER BY id",
                              columns<T>("{}"), kind, of_piece_sql<T>()));
    statement.bind(1, piece.value);
    while (statement.executeStep()) {
      T row{};
      const int since = read_row(statement, row);
      const SQLite::Column ended = statement.getColumn(since + 1);
      const Json json = to_json(row, words);
      const auto first = lines.first.find(row.id.value);
      lines.details[statement.getColumn(since).getInt64()]["added"][kind].push_back(
          first == lines.first.end() ? json : first->second);
      if (!ended.isNull() && !lines.withdrawn.contains(row.id.value)) {
        lines.details[ended.getInt64()]["superseded"][kind].push_back(json);
      }
    }
  }
}

Lines lines_of(SQLite::Database& database, model::Id<model::Piece> piece) {
  Lines lines;
  Words words(database);
  read_lines(database, piece, lines);
  each_kind([&](auto kind) {
    read_records<typename decltype(kind)::type>(database, piece, words, lines);
  });
  return lines;
}

// An entry's own counts, and the first lines of it.
std::string with_lines(SQLite::Database& database,
                       std::int64_t position,
                       const std::string& own) {
  SQLite::Statement line(database,
                         "SELECT position, what, kind, id, detail FROM book_line "
                         "WHERE position = ? ORDER BY rowid LIMIT ?");
  line.bind(1, position);
  line.bind(2, lines_shown + 1);
  Json detail = Json::parse(own);
  int count = 0;
  while (line.executeStep()) {
    if (++count > lines_shown) {
      detail["more"] = true;
      break;
    }
    put_line(detail, line);
  }
  return dumped(detail);
}

std::vector<Entry> whole_book(SQLite::Database& database, std::size_t count) {
  SQLite::Statement statement(database,
                              "SELECT position, at, who, operation, summary, detail FROM book "
                              "ORDER BY position DESC LIMIT ?");
  statement.bind(1, static_cast<std::int64_t>(count));
  std::vector<Entry> entries;
  while (statement.executeStep()) {
    entries.push_back(read_entry(statement));
    entries.back().detail =
        with_lines(database, entries.back().position, entries.back().detail);
  }
  return entries;
}

std::vector<Entry> book_of(SQLite::Database& database,
                           std::size_t count,
                           model::Id<model::Piece> piece) {
  const Lines lines = lines_of(database, piece);
  SQLite::Statement statement(database,
                              "SELECT position, at, who, operation, summary, '' FROM book "
                              "WHERE position = ?");
  std::vector<Entry> entries;
  for (auto line = lines.details.rbegin(); line != lines.details.rend(); ++line) {
    if (entries.size() == count) {
      break;
    }
    statement.reset();
    statement.bind(1, line->first);
    if (statement.executeStep()) {
      entries.push_back(read_entry(statement));
      entries.back().detail = dumped(line->second);
    }
  }
  return entries;
}

void add_steps_back(SQLite::Database& database, std::vector<Entry>& entries) {
  const StepsBack steps(database);
  for (Entry& entry : entries) {
    entry.undoes = steps.target(entry.position);
    entry.undone_by = steps.undone_by(entry.position).value_or(0);
  }
}

}  // namespace

Entry read_entry(SQLite::Statement& statement) {
  Entry entry;
  entry.position = statement.getColumn(0).getInt64();
  entry.at = statement.getColumn(1).getInt64();
  entry.who = statement.getColumn(2).getString();
  entry.operation = statement.getColumn(3).getString();
  entry.summary = statement.getColumn(4).getString();
  entry.detail = statement.getColumn(5).getString();
  return entry;
}

Result<std::vector<Entry>> Store::book(std::size_t count, model::Id<model::Piece> piece) {
  try {
    SQLite::Transaction reading(*inside_->database);
    auto entries = piece ? book_of(*inside_->database, count, piece)
                         : whole_book(*inside_->database, count);
    add_steps_back(*inside_->database, entries);
    return entries;
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

}  // namespace backmark::store
