// A change applied to a show in memory, as the store does it on disk.
#pragma once

#include <algorithm>
#include <unordered_set>

#include "model/change.h"

namespace backmark {

template <class T>
void apply_to(const model::Change& change,
              const std::unordered_set<std::int32_t>& gone,
              std::vector<T>& rows) {
  std::erase_if(rows, [&](const T& row) { return gone.contains(row.id.value); });
  for (const T& row : std::get<std::vector<T>>(change.replaced())) {
    const auto at =
        std::find_if(rows.begin(), rows.end(), [&](const T& old) { return old.id == row.id; });
    if (at != rows.end()) {
      *at = row;
    }
  }
  const auto& added = std::get<std::vector<T>>(change.added());
  rows.insert(rows.end(), added.begin(), added.end());
}

inline void apply(model::Show& show, const model::Change& change) {
  std::unordered_set<std::int32_t> gone;
  for (const model::Withdrawal& withdrawal : change.withdrawn()) {
    gone.insert(withdrawal.id);
  }
  std::apply(
      [&](const auto&... rows) {
        const auto collect = [&](const auto& row) {
          if constexpr (requires { row.supersedes; }) {
            gone.insert(row.supersedes.value);
          }
        };
        (std::for_each(rows.begin(), rows.end(), collect), ...);
      },
      change.added());
  show.change_each_kind([&](auto& rows) { apply_to(change, gone, rows); });
  for (const std::string& word : change.new_words()) {
    show.pool.take(word);
  }
  show.next_id = change.next_id();
  ++show.position;
  show.settle();
}

}  // namespace backmark
