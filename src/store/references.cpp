#include "store/references.h"

#include <algorithm>
#include <array>
#include <bit>

#include "store/reference_walk.h"

namespace backmark::store {

namespace {

using namespace model;

template <class T>
bool has(const std::vector<T>& rows, std::int32_t id) {
  const auto at =
      std::lower_bound(rows.begin(), rows.end(), id,
                       [](const T& row, std::int32_t want) { return row.id.value < want; });
  return at != rows.end() && at->id.value == id;
}

// The wanted kinds of which `records`, each kind in the order of ids, hold the id.
Kinds kinds_in(const Records& records, std::int32_t id, Kinds wanted) {
  Kinds found = 0;
  Kinds at = 1;
  const auto look = [&](const auto& rows) {
    found |= (wanted & at) != 0 && has(rows, id) ? at : 0;
    at <<= 1;
  };
  std::apply([&](const auto&... rows) { (look(rows), ...); }, records);
  return found;
}

// Neighbours name the same few records: the last one found of each kind is tried first.
class LastFound {
 public:
  // The wanted kind as which the id was found last, or 0.
  Kinds kind_of(std::int32_t id, Kinds wanted) const {
    for (Kinds left = wanted; left != 0; left &= left - 1) {
      const auto at = static_cast<std::size_t>(std::countr_zero(left));
      if (last_[at] == id && id != 0) {
        return Kinds{1} << at;
      }
    }
    return 0;
  }
  void keep(std::int32_t id, Kinds found) {
    if (found != 0) {
      last_[static_cast<std::size_t>(std::countr_zero(found))] = id;
    }
  }

 private:
  std::array<std::int32_t, kind_count> last_{};
};

struct InShow {
  const Records& records;
  LastFound last = {};

  Kinds kinds_of(std::int32_t id, Kinds wanted) {
    if (const Kinds known = last.kind_of(id, wanted); known != 0) {
      return known;
    }
    const Kinds found = kinds_in(records, id, wanted);
    last.keep(id, found);
    return found;
  }
};

// What the change added is looked up in memory, what was there before in the database.
class InDatabase {
 public:
  InDatabase(SQLite::Database& database, const Records& added) : added_(added) {
    each_kind([&](auto kind) {
      holding_.emplace_back(database,
                            fmt::format("SELECT 1 FROM {} WHERE id = ? AND ended IS NULL",
                                        table<typename decltype(kind)::type>));
    });
  }

  Kinds kinds_of(std::int32_t id, Kinds wanted) {
    if (const Kinds known = last_.kind_of(id, wanted); known != 0) {
      return known;
    }
    Kinds found = kinds_in(added_, id, wanted);
    for (std::size_t i = 0; i < kind_count && found == 0; ++i) {
      if ((wanted >> i & 1) != 0 && holds(holding_[i], id)) {
        found = Kinds{1} << i;
      }
    }
    last_.keep(id, found);
    return found;
  }

 private:
  static bool holds(SQLite::Statement& statement, std::int32_t id) {
    statement.bind(1, id);
    const bool found = statement.executeStep();
    statement.reset();
    return found;
  }

  const Records& added_;
  std::vector<SQLite::Statement> holding_;
  LastFound last_;
};

std::string place_of(SQLite::Database& database, Id<Piece> piece) {
  SQLite::Statement statement(database, "SELECT number FROM piece WHERE id = ?");
  statement.bind(1, piece.value);
  return statement.executeStep() ? "piece " + statement.getColumn(0).getString() : "";
}

}  // namespace

std::optional<Problem> dangling_in(const Records& records, const model::Pool& pool) {
  InShow book{records};
  Walk walk(book, pool.size());
  walk.over(records);
  if (!walk.found()) {
    return {};
  }
  std::string where;
  for (const Piece& piece : std::get<std::vector<Piece>>(records)) {
    where = piece.id == walk.found()->piece ? "piece " + piece.number : where;
  }
  return Problem{Fault::io, "the show's file is damaged: " + walk.found()->what, where,
                 "go back to a copy; nothing was changed"};
}

std::optional<Problem> dangling_after(SQLite::Database& database, const Change& change) {
  InDatabase book(database, change.added());
  Walk walk(book, change.first_new_word() + change.new_words().size());
  walk.over(change.added());
  walk.over(change.replaced());
  if (!walk.found()) {
    return withdrawn_still_named(database, change.withdrawn());
  }
  return Problem{Fault::not_found, walk.found()->what, place_of(database, walk.found()->piece),
                 "load the show again and name what is there; nothing was changed"};
}

}  // namespace backmark::store
