#include "web/ration.h"

#include <algorithm>

namespace backmark::web {

bool Ration::take(const std::string& asker, double seconds) {
  constexpr std::size_t most_askers = 4096;
  const std::lock_guard lock(mutex_);
  if (left_.size() >= most_askers && !left_.contains(asker)) {
    // Who has his full ration again need not be remembered.
    std::erase_if(left_, [&](const auto& one) {
      return one.second.tokens + (seconds - one.second.at) * a_second_ >= burst_;
    });
    if (left_.size() >= most_askers) {
      return false;
    }
  }
  Left& left = left_.try_emplace(asker, Left{burst_, seconds}).first->second;
  left.tokens = std::min(burst_, left.tokens + (seconds - left.at) * a_second_);
  left.at = seconds;
  if (left.tokens < 1) {
    return false;
  }
  left.tokens -= 1;
  return true;
}

double steady_seconds() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch())
      .count();
}

}  // namespace backmark::web
