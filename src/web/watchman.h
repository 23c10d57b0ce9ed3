// Hears of every change of a show, by whichever program, for pages that wait.
#pragma once

#include <condition_variable>
#include <cstdint>
#include <mutex>
#include <optional>

#include "base/file.h"
#include "base/json_fwd.h"
#include "store/store.h"

namespace backmark::web {

class Watchman {
 public:
  explicit Watchman(Path show) : show_(std::move(show)) {}

  // The newest place in the book, at most a quarter second old. 0 if it cannot be read now.
  std::int64_t last();
  // Somebody wrote: those who wait look at once.
  void ring();
  // Wakes all who wait, for good.
  void end();

  // {last, changes: [{id, who, when, what, pieces, more}]} after a place, at once if there are
  // any, else when one comes or `seconds` have passed. Problems: those of the store.
  Result<Json> changes_after(std::int64_t position, double seconds);

 private:
  std::int64_t look(double now);
  Result<Done> open();

  Path show_;
  std::mutex mutex_;
  std::condition_variable came_;
  std::optional<store::Store> store_;
  std::int64_t last_ = 0;
  double looked_at_ = -1;
  bool ended_ = false;
};

}  // namespace backmark::web
