#include "model/changed.h"

#include <unordered_map>
#include <unordered_set>

namespace backmark::model {

namespace {

template <class T>
void replace_rows(const std::vector<T>& replaced, std::vector<T>& rows) {
  if (replaced.empty()) {
    return;
  }
  std::unordered_map<std::int32_t, const T*> by_id;
  for (const T& row : replaced) {
    by_id[row.id.value] = &row;
  }
  for (T& row : rows) {
    if (const auto anew = by_id.find(row.id.value); anew != by_id.end()) {
      row = *anew->second;
    }
  }
}

template <class T>
void change_rows(const Change& change,
                 const std::unordered_set<std::int32_t>& ended,
                 std::vector<T>& rows) {
  if (!ended.empty()) {
    std::erase_if(rows, [&](const T& row) { return ended.contains(row.id.value); });
  }
  replace_rows(std::get<std::vector<T>>(change.replaced()), rows);
  const auto& added = std::get<std::vector<T>>(change.added());
  rows.insert(rows.end(), added.begin(), added.end());
}

// What is withdrawn, and what an added record supersedes.
std::unordered_set<std::int32_t> ended_by(const Change& change) {
  std::unordered_set<std::int32_t> ended;
  for (const Withdrawal& withdrawal : change.withdrawn()) {
    ended.insert(withdrawal.id);
  }
  const auto add_superseded = [&](const auto& rows) {
    for (const auto& row : rows) {
      if constexpr (requires { row.supersedes; }) {
        if (row.supersedes) {
          ended.insert(row.supersedes.value);
        }
      }
    }
  };
  std::apply([&](const auto&... rows) { (add_superseded(rows), ...); }, change.added());
  return ended;
}

}  // namespace

Show changed(const Show& before, const Change& change) {
  Show after;
  after.records = before.records;
  after.pool = before.pool;
  for (const std::string& text : change.new_words()) {
    after.pool.take(text);
  }
  after.position = before.position + 1;
  after.next_id = change.next_id();
  const auto ended = ended_by(change);
  std::apply([&](auto&... rows) { (change_rows(change, ended, rows), ...); }, after.records);
  after.settle();
  return after;
}

}  // namespace backmark::model
