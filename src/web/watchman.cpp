#include "web/watchman.h"

#include <algorithm>
#include <chrono>

#include "base/json.h"
#include "web/ration.h"

namespace backmark::web {

namespace {

constexpr double look_every = 0.25;     // seconds
constexpr std::size_t most_told = 500;  // changes in one answer

Json told(const store::Moved& moved) {
  Json change = {{"id", moved.position},  {"who", moved.who},
                 {"when", moved.at},      {"operation", moved.operation},
                 {"what", moved.summary}, {"pieces", moved.numbers}};
  if (moved.pieces > static_cast<std::int64_t>(moved.numbers.size())) {
    change["more"] = true;
  }
  return change;
}

}  // namespace

Result<Done> Watchman::open() {
  if (store_) {
    return Done{};
  }
  auto store = store::Store::open(show_, store::Access::look);
  if (!store) {
    return store.problem();
  }
  store_.emplace(std::move(*store));
  return Done{};
}

std::int64_t Watchman::look(double now) {
  if (now - looked_at_ >= look_every && open()) {
    looked_at_ = now;
    if (const auto moment = store_->moment()) {
      last_ = moment->position;
    }
  }
  return last_;
}

std::int64_t Watchman::last() {
  const std::lock_guard lock(mutex_);
  return look(steady_seconds());
}

void Watchman::ring() {
  {
    const std::lock_guard lock(mutex_);
    looked_at_ = -1;
  }
  came_.notify_all();
}

void Watchman::end() {
  {
    const std::lock_guard lock(mutex_);
    ended_ = true;
  }
  came_.notify_all();
}

Result<Json> Watchman::changes_after(std::int64_t position, double seconds) {
  std::unique_lock lock(mutex_);
  if (auto opened = open(); !opened) {
    return opened.problem();
  }
  const double until = steady_seconds() + seconds;
  double now = steady_seconds();
  while (look(now) <= position && now < until && !ended_) {
    came_.wait_for(lock, std::chrono::duration<double>(std::min(look_every, until - now)));
    now = steady_seconds();
  }
  const auto moved = store_->moved_after(position, most_told);
  if (!moved) {
    return moved.problem();
  }
  Json changes = Json::array();
  for (const store::Moved& one : *moved) {
    changes.push_back(told(one));
  }
  const bool all = moved->size() < most_told;
  return Json{{"last", moved->empty() ? last_
                       : all          ? std::max(last_, moved->back().position)
                                      : moved->back().position},
              {"changes", changes}};
}

}  // namespace backmark::web
