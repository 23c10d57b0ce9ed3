// Which changes were taken back, and which records stand again. For the bodies of this room
// only.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>
#include <cstdint>
#include <map>
#include <optional>
#include <unordered_map>
#include <vector>

namespace backmark::store {

// Read at one moment; linear in the steps ever taken back.
class StepsBack {
 public:
  explicit StepsBack(SQLite::Database& database);

  // A change that takes back another.
  bool is_step_back(std::int64_t position) const { return target_.contains(position); }
  // The change that a step back takes back; 0: it is no step back.
  std::int64_t target(std::int64_t position) const;
  // The one that takes it back now, if any: a step back may have been taken back itself.
  std::optional<std::int64_t> undone_by(std::int64_t position) const;
  // Whether a change after `position` left a mark that taking `position` back would wipe out.
  bool in_the_way(std::int64_t later, std::int64_t position) const;
  // The record that says today what record `id` said.
  std::int32_t today(std::int32_t id) const;
  // `id` and every record that said it anew since.
  std::vector<std::int32_t> sayings(std::int32_t id) const;

 private:
  std::map<std::int64_t, std::int64_t> target_;               // step back -> what it takes back
  std::multimap<std::int64_t, std::int64_t> takers_;          // the other way
  std::unordered_map<std::int32_t, std::int32_t> said_anew_;  // old record -> new
};

}  // namespace backmark::store
