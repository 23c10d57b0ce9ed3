#include <unordered_set>

#include "store/reference_walk.h"
#include "store/references.h"

namespace backmark::store {

namespace {

using namespace model;

// Columns that hold one id of a record, for a search of what still names what was withdrawn.
template <class T>
std::vector<std::string> naming_columns() {
  std::vector<std::string> columns;
  const T row{};
  fields_of(row, [&](std::string_view column, const auto& member) {
    using M = std::decay_t<decltype(member)>;
    if constexpr (target_of<M> != 0 && !std::is_same_v<M, Id<T>> &&
                  requires { member.value; }) {
      columns.emplace_back(column);
    }
  });
  if constexpr (requires { subjects_of(row); }) {
    columns.emplace_back("subject");
  }
  return columns;
}

std::string ids_as_json(const std::vector<Withdrawal>& withdrawn) {
  std::vector<std::string> ids;
  for (const Withdrawal& withdrawal : withdrawn) {
    ids.push_back(std::to_string(withdrawal.id));
  }
  return "[" + join(ids, ",") + "]";
}

Problem still_named(std::string_view who, std::int64_t id, std::int64_t withdrawn) {
  return {Fault::conflict,
          fmt::format("record {} cannot be withdrawn while {} {} names it", withdrawn,
                      kind_name(who), id),
          "", "withdraw that one too, or let it name another; nothing was changed"};
}

template <class T>
std::optional<Problem> still_naming(SQLite::Database& database, const std::string& ids) {
  for (const std::string& column : naming_columns<T>()) {
    SQLite::Statement statement(
        database, fmt::format("SELECT id, \"{}\" FROM {} WHERE ended IS NULL AND \"{}\" IN "
                              "(SELECT value FROM json_each(?)) LIMIT 1",
                              column, table<T>, column));
    statement.bind(1, ids);
    if (statement.executeStep()) {
      return still_named(table<T>, statement.getColumn(0).getInt64(),
                         statement.getColumn(1).getInt64());
    }
  }
  return {};
}

std::optional<Problem> source_still_derived(SQLite::Database& database,
                                            const std::vector<Withdrawal>& withdrawn) {
  std::unordered_set<std::int32_t> gone;
  for (const Withdrawal& withdrawal : withdrawn) {
    gone.insert(withdrawal.id);
  }
  SQLite::Statement statement(
      database,
      "SELECT id, derives_from FROM source WHERE ended IS NULL AND derives_from <> ''");
  while (statement.executeStep()) {
    std::vector<Id<Source>> from;
    read_list(statement.getColumn(1).getText(""), from);
    for (const Id<Source> source : from) {
      if (gone.contains(source.value)) {
        return still_named("source", statement.getColumn(0).getInt64(), source.value);
      }
    }
  }
  return {};
}

// Records of these kinds are what others name; nothing names an observation or a note.
bool may_be_named(SQLite::Database& database, const std::string& ids) {
  for (const std::string_view kind :
       {table<Piece>, table<Part>, table<Character>, table<Maker>, table<Source>,
        table<Section>, table<Lender>, table<Case>, table<Photograph>}) {
    SQLite::Statement statement(
        database,
        fmt::format("SELECT 1 FROM {} WHERE id IN (SELECT value FROM json_each(?)) LIMIT 1",
                    kind));
    statement.bind(1, ids);
    if (statement.executeStep()) {
      return true;
    }
  }
  return false;
}

}  // namespace

std::optional<Problem> withdrawn_still_named(SQLite::Database& database,
                                             const std::vector<Withdrawal>& withdrawn) {
  const std::string ids = ids_as_json(withdrawn);
  if (withdrawn.empty() || !may_be_named(database, ids)) {
    return {};
  }
  std::optional<Problem> problem = source_still_derived(database, withdrawn);
  each_kind([&](auto kind) {
    if (!problem) {
      problem = still_naming<typename decltype(kind)::type>(database, ids);
    }
  });
  return problem;
}

}  // namespace backmark::store
