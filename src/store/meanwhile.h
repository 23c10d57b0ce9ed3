// What happened to a show between the moment somebody looked and the moment he writes. For the
// bodies of this room only.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>
#include <cstdint>
#include <set>
#include <string>
#include <utility>

#include "store/rows.h"

namespace backmark::store {

// What of its piece a record is: two changes of the same thing exclude each other, two of
// different things do not. Empty: any number of these may be added side by side.
template <class T>
std::string thing_of(const T& row) {
  if constexpr (std::is_same_v<T, model::Observation>) {
    return fmt::format("observation {} {}", row.character.value, row.part.value);
  } else if constexpr (std::is_same_v<T, model::Overruling>) {
    return fmt::format("overruling {}", static_cast<int>(row.of));
  } else if constexpr (std::is_same_v<T, model::Pick> || std::is_same_v<T, model::Placement> ||
                       std::is_same_v<T, model::Requirement>) {
    return std::string(table<T>);
  } else {
    return "";
  }
}

// The things that one change touches.
class Things {
 public:
  void add(std::int32_t piece, std::string thing);
  // A record that was replaced or withdrawn.
  void add_record(std::int32_t id) { records_.insert(id); }
  void write(SQLite::Database& database, std::int64_t position) const;

  const std::set<std::pair<std::int32_t, std::string>>& of_pieces() const { return of_pieces_; }
  const std::set<std::int32_t>& records() const { return records_; }

 private:
  std::set<std::pair<std::int32_t, std::string>> of_pieces_;
  std::set<std::int32_t> pieces_;
  std::set<std::int32_t> records_;
};

// Throws a Problem (conflict; `where` is the number of the piece) if a change after `seen` and
// before `position` touched one of the things.
void check_nobody_else(SQLite::Database& database,
                       const Things& things,
                       std::int64_t seen,
                       std::int64_t position);

// Notes the request's name; nothing if it is empty. Throws a Problem (conflict) if it was noted
// before.
void keep_request(SQLite::Database& database, const std::string& once, std::int64_t position);

}  // namespace backmark::store
