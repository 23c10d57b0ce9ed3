// The full-text index: one entry a piece, made from the tables whenever the piece is touched.
#include "base/text.h"
#include "store/database.h"
#include "store/inside.h"
#include "store/search_index.h"

namespace backmark::store {

namespace {

constexpr auto make_entry = R"(
INSERT INTO found (rowid, number, title, marks, notes, words)
SELECT p.id, p.number, p.title,
  coalesce((SELECT group_concat(text, ' ') FROM mark
            WHERE piece = p.id AND ended IS NULL), ''),
  coalesce((SELECT group_concat(text, ' ') FROM note
            WHERE piece = p.id AND ended IS NULL), ''),
  coalesce((SELECT group_concat(w.text, ' ') FROM observation o JOIN word w ON w.id = o.value
            WHERE o.piece = p.id AND o.ended IS NULL), '')
FROM piece p WHERE p.id = ? AND p.ended IS NULL)";

// Every word in quotes, so that nothing a person types is taken for the query language.
std::string as_query(std::string_view text) {
  std::vector<std::string> quoted;
  for (const auto part : split(text, " ")) {
    if (!trim(part).empty()) {
      quoted.push_back("\"" + replace_all(std::string(trim(part)), "\"", "\"\"") + "\"");
    }
  }
  return join(quoted, " ");
}

}  // namespace

void index_pieces(SQLite::Database& database, const std::set<std::int32_t>& pieces) {
  SQLite::Statement drop(database, "DELETE FROM found WHERE rowid = ?");
  SQLite::Statement make(database, make_entry);
  const std::int64_t highest =
      database.execAndGet("SELECT coalesce(max(rowid), 0) FROM found").getInt64();
  for (const std::int32_t piece : pieces) {
    if (piece <= highest) {
      drop.bind(1, piece);
      drop.exec();
      drop.reset();
    }
    make.bind(1, piece);
    make.exec();
    make.reset();
  }
}

Result<std::vector<Hit>> Store::search(std::string_view text, std::size_t count) {
  const std::string query = as_query(text);
  if (query.empty()) {
    return Problem{Fault::bad_input, "there is nothing to look for", "",
                   "give a word or a number"};
  }
  try {
    SQLite::Statement statement(
        *inside_->database,
        "SELECT rowid, number, snippet(found, -1, '', '', ' ... ', 10) FROM found "
        "WHERE found MATCH ? ORDER BY rank, number LIMIT ?");
    statement.bind(1, query);
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
