// The full-text index: one entry a piece, made from the tables whenever the piece is touched.
#include "store/search_index.h"

namespace backmark::store {

namespace {

constexpr auto make_entry =
    "INSERT INTO found (rowid, number, title, marks, notes, words, people, places, said) "
    "SELECT id, number, title, marks, notes, words, people, places, said FROM piece_text "
    "WHERE id = ?";

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

}  // namespace backmark::store
