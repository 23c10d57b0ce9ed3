#include "store/steps_back.h"

namespace backmark::store {

StepsBack::StepsBack(SQLite::Database& database) {
  SQLite::Statement step(database, "SELECT by, position FROM undone ORDER BY by");
  while (step.executeStep()) {
    target_[step.getColumn(0).getInt64()] = step.getColumn(1).getInt64();
    takers_.emplace(step.getColumn(1).getInt64(), step.getColumn(0).getInt64());
  }
  SQLite::Statement record(database, "SELECT was, id FROM restored");
  while (record.executeStep()) {
    said_anew_[record.getColumn(0).getInt()] = record.getColumn(1).getInt();
  }
}

std::int64_t StepsBack::target(std::int64_t position) const {
  const auto found = target_.find(position);
  return found == target_.end() ? 0 : found->second;
}

std::optional<std::int64_t> StepsBack::undone_by(std::int64_t position) const {
  const auto [first, last] = takers_.equal_range(position);
  for (auto taker = first; taker != last; ++taker) {
    if (!undone_by(taker->second)) {
      return taker->second;
    }
  }
  return {};
}

bool StepsBack::in_the_way(std::int64_t later, std::int64_t position) const {
  if (later <= position || undone_by(later)) {
    return false;
  }
  // A step back from something later than `position` only puts back what `position` left.
  const auto target = target_.find(later);
  return target == target_.end() || target->second < position;
}

std::int32_t StepsBack::today(std::int32_t id) const {
  return sayings(id).back();
}

std::vector<std::int32_t> StepsBack::sayings(std::int32_t id) const {
  std::vector<std::int32_t> all = {id};
  for (auto next = said_anew_.find(id); next != said_anew_.end();
       next = said_anew_.find(next->second)) {
    all.push_back(next->second);
  }
  return all;
}

}  // namespace backmark::store
