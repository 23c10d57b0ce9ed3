// Building the change that takes another back. A Problem inside is thrown; undoing() hands it
// back as a value.
#include <unordered_map>
#include <unordered_set>

#include "base/text.h"
#include "store/database.h"
#include "store/inside.h"
#include "store/rows.h"
#include "store/steps_back.h"

namespace backmark::store {

namespace {

using model::Change;

template <class M>
inline constexpr bool is_id = false;
template <class T>
inline constexpr bool is_id<model::Id<T>> = true;

template <class T>
std::vector<T> rows_where(SQLite::Database& database,
                          std::string_view column,
                          std::int64_t position) {
  SQLite::Statement statement(
      database, fmt::format("SELECT {} FROM {} WHERE {} = ? ORDER BY id", columns<T>("{}"),
                            table<T>, column));
  statement.bind(1, position);
  std::vector<T> rows;
  while (statement.executeStep()) {
    read_row(statement, rows.emplace_back());
  }
  return rows;
}

// A step back that is taken back does its change again.
std::string summary_of(const Entry& undone) {
  if (undone.undoes == 0) {
    return starts_with(undone.summary, undone.operation)
               ? "undone: " + undone.summary
               : fmt::format("undone: {} {}", undone.operation, undone.summary);
  }
  const auto colon = undone.summary.find(": ");
  const bool was_undone = undone.summary.rfind("undone", 0) == 0;
  return (was_undone ? "again" : "undone") + undone.summary.substr(colon);
}

class Undoer {
 public:
  Undoer(SQLite::Database& database, const model::Show& show, const Entry& undone)
      : database_(database),
        steps_(database),
        undone_(undone),
        change_(show, "undo", summary_of(undone)),
        next_id_(show.next_id) {
    change_.takes_back(undone.position);
    each_kind([&](auto kind) { note_standing<typename decltype(kind)::type>(show); });
  }

  Change take_back() {
    if (const auto by = steps_.undone_by(undone_.position)) {
      throw Problem{
          Fault::conflict,
          fmt::format("change {} was taken back already, by change {}", undone_.position, *by),
          "", fmt::format("take back change {} to do it again", *by)};
    }
    read_later_lines();
    each_kind([&](auto kind) { plan<typename decltype(kind)::type>(); });
    each_kind([&](auto kind) { end_and_rewrite<typename decltype(kind)::type>(); });
    each_kind([&](auto kind) { say_again<typename decltype(kind)::type>(); });
    if (change_.empty()) {
      throw Problem{Fault::conflict,
                    fmt::format("change {} left nothing to take back", undone_.position), "",
                    "look at its history"};
    }
    return std::move(change_);
  }

 private:
  template <class T>
  void note_standing(const model::Show& show) {
    for (const T& row : show.all<T>()) {
      standing_.insert(row.id.value);
    }
  }

  // Records that later changes wrote anew or withdrew, where that would be lost.
  void read_later_lines() {
    SQLite::Statement line(database_, "SELECT id, position FROM book_line WHERE position > ?");
    line.bind(1, undone_.position);
    while (line.executeStep()) {
      const std::int64_t later = line.getColumn(1).getInt64();
      if (steps_.in_the_way(later, undone_.position)) {
        in_the_way_[line.getColumn(0).getInt()] = later;
      }
    }
  }

  // The record as it is named today, if nobody touched it since.
  std::int32_t untouched(std::int32_t id) {
    const auto sayings = steps_.sayings(id);
    for (const std::int32_t one : sayings) {
      if (const auto later = in_the_way_.find(one); later != in_the_way_.end()) {
        throw Problem{Fault::conflict,
                      fmt::format("change {} touched what change {} left", later->second,
                                  undone_.position),
                      "", fmt::format("take back change {} first", later->second)};
      }
    }
    if (!standing_.contains(sayings.back())) {
      throw Problem{Fault::conflict,
                    fmt::format("what change {} left was replaced since", undone_.position), "",
                    "take back the later change first; \"history\" has its number"};
    }
    return sayings.back();
  }

  template <class T>
  std::vector<T>& again() {
    return std::get<std::vector<T>>(again_);
  }

  // What ended stands again, under the ids it will get.
  template <class T>
  void plan() {
    for (T& row : rows_where<T>(database_, "ended", undone_.position)) {
      planned_[steps_.today(row.id.value)] =
          next_id_ + static_cast<std::int32_t>(planned_.size());
      again<T>().push_back(std::move(row));
    }
  }

  template <class T>
  void end_and_rewrite() {
    for (const T& row : rows_where<T>(database_, "since", undone_.position)) {
      const std::int32_t today = untouched(row.id.value);
      if constexpr (is_testimony<T>) {
        if (row.supersedes) {
          superseder_[row.supersedes.value] = today;  // ends by being superseded in turn
          continue;
        }
      }
      change_.withdraw(model::Id<T>{today}, fmt::format("change {} undone", undone_.position));
    }
    SQLite::Statement line(database_,
                           "SELECT id, detail FROM book_line WHERE position = ? AND "
                           "kind = ? AND what = 'replaced' ORDER BY rowid");
    line.bind(1, undone_.position);
    line.bind(2, std::string(table<T>));
    std::unordered_set<std::int32_t> met;  // one that changed its piece has two lines
    while (line.executeStep()) {
      const std::int32_t id = line.getColumn(0).getInt();
      if (met.insert(id).second) {
        rewrite<T>(id, Json::parse(line.getColumn(1).getText("{}")).at("was"));
      }
    }
  }

  template <class T>
  void rewrite(std::int32_t id, const Json& was) {
    T row = from_json<T>(was, [&](const std::string& text) { return change_.word(text); });
    row.id.value = untouched(id);
    name_as_today(row);
    change_.replace(std::move(row));
  }

  template <class T>
  void say_again() {
    for (T& row : again<T>()) {
      name_as_today(row);
      if constexpr (is_testimony<T>) {
        const auto superseder = superseder_.find(row.id.value);
        row.supersedes.value = superseder == superseder_.end() ? 0 : superseder->second;
      }
      row.id.value = steps_.today(row.id.value);  // one chain of sayings, never two
      change_.restore(std::move(row));
    }
  }

  std::int32_t today(std::int32_t id) const {
    const std::int32_t now = steps_.today(id);
    const auto planned = planned_.find(now);
    return planned == planned_.end() ? now : planned->second;
  }

  // The records that a row names may stand under other ids by now.
  template <class T>
  void name_as_today(T& row) const {
    fields_of(row, [&](std::string_view column, auto& member) {
      using M = std::decay_t<decltype(member)>;
      if constexpr (std::is_same_v<M, model::Id<T>> || std::is_same_v<M, model::Word>) {
        return;
      } else if constexpr (std::is_same_v<M, std::vector<model::Id<model::Source>>>) {
        for (auto& id : member) {
          id.value = today(id.value);
        }
      } else if constexpr (std::is_same_v<M, std::int32_t>) {
        if (column == "subject") {
          member = today(member);
        }
      } else if constexpr (is_id<M>) {
        member.value = today(member.value);
      }
    });
  }

  SQLite::Database& database_;
  StepsBack steps_;
  Entry undone_;
  Change change_;
  std::int32_t next_id_;
  std::unordered_set<std::int32_t> standing_;
  std::unordered_map<std::int32_t, std::int64_t> in_the_way_;  // record -> later change
  model::Records again_;
  std::unordered_map<std::int32_t, std::int32_t> planned_;     // ended record -> its new id
  std::unordered_map<std::int32_t, std::int32_t> superseder_;  // ended record -> who stands
};

constexpr std::string_view entry_sql =
    "SELECT position, at, who, operation, summary, '' FROM book ";

Entry entry_at(SQLite::Database& database, std::int64_t position) {
  SQLite::Statement statement(database, fmt::format("{} WHERE position = ?", entry_sql));
  statement.bind(1, position);
  if (!statement.executeStep()) {
    throw Problem{Fault::not_found, fmt::format("there is no change {}", position), "",
                  "\"backmark history SHOW\" has their numbers"};
  }
  return read_entry(statement);
}

Entry newest_by(SQLite::Database& database, const std::string& who) {
  const StepsBack steps(database);
  SQLite::Statement statement(
      database, fmt::format("{} WHERE who = ? ORDER BY position DESC", entry_sql));
  statement.bind(1, who);
  while (statement.executeStep()) {
    const std::int64_t position = statement.getColumn(0).getInt64();
    Entry entry = read_entry(statement);
    const bool begins = entry.operation == "new";  // only by its number
    if (!begins && !steps.is_step_back(position) && !steps.undone_by(position)) {
      return entry;
    }
  }
  throw Problem{Fault::not_found, fmt::format("{} has changed nothing that holds", who), "",
                "\"backmark history SHOW\" has every change; take one back by its number"};
}

std::int64_t last_step_back_by(SQLite::Database& database, const std::string& who) {
  const StepsBack steps(database);
  SQLite::Statement statement(database,
                              "SELECT position FROM book WHERE who = ? ORDER BY position DESC");
  statement.bind(1, who);
  while (statement.executeStep()) {
    const std::int64_t position = statement.getColumn(0).getInt64();
    if (!steps.is_step_back(position)) {
      break;
    }
    const bool does_again = steps.is_step_back(steps.target(position));
    if (!does_again && !steps.undone_by(position)) {
      return position;
    }
  }
  throw Problem{Fault::not_found, fmt::format("{} has nothing to do again", who), "",
                "only what was undone last, with nothing changed since, is done again"};
}

}  // namespace

Result<std::int64_t> Store::last_step_back(const std::string& who) {
  try {
    return last_step_back_by(*inside_->database, who);
  } catch (const Problem& problem) {
    return problem;
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

Result<Undoing> Store::undoing(const model::Show& show,
                               std::optional<std::int64_t> position,
                               const std::string& who) {
  try {
    SQLite::Transaction reading(*inside_->database);
    Entry undone =
        position ? entry_at(*inside_->database, *position) : newest_by(*inside_->database, who);
    undone.undoes = StepsBack(*inside_->database).target(undone.position);
    return Undoing{undone, Undoer(*inside_->database, show, undone).take_back()};
  } catch (const Problem& problem) {
    return problem;
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

}  // namespace backmark::store
