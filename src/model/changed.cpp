#include "model/changed.h"

#include <algorithm>
#include <iterator>
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
bool touches(const Change& change,
             const std::unordered_set<std::int32_t>& ended,
             const std::vector<T>& rows) {
  return !std::get<std::vector<T>>(change.added()).empty() ||
         !std::get<std::vector<T>>(change.replaced()).empty() ||
         (!ended.empty() && std::any_of(rows.begin(), rows.end(), [&](const T& row) {
           return ended.contains(row.id.value);
         }));
}

// Made in one pass beside the rows of before, which the show of before goes on to hold.
template <class T>
std::vector<T> changed_rows(const Change& change,
                            const std::unordered_set<std::int32_t>& ended,
                            const std::vector<T>& before) {
  const auto& added = std::get<std::vector<T>>(change.added());
  std::vector<T> rows;
  rows.reserve(before.size() + added.size());
  std::copy_if(before.begin(), before.end(), std::back_inserter(rows),
               [&](const T& row) { return ended.empty() || !ended.contains(row.id.value); });
  replace_rows(std::get<std::vector<T>>(change.replaced()), rows);
  rows.insert(rows.end(), added.begin(), added.end());
  return rows;
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
  Show after = before;
  for (const std::string& text : change.new_words()) {
    after.pool.take(text);
  }
  after.position = before.position + 1;
  after.next_id = change.next_id();
  const auto ended = ended_by(change);
  before.each_kind([&]<class T>(const std::vector<T>& rows) {
    if (touches(change, ended, rows)) {
      after.fill(changed_rows(change, ended, rows));
    }
  });
  after.settle();
  return after;
}

}  // namespace backmark::model
