// A show kept in memory between the calls of one door, so that a page need not wait for it to
// be read. Safe to use from several threads.
#pragma once

#include <any>
#include <map>
#include <memory>
#include <mutex>
#include <string>

#include "model/show.h"
#include "store/store.h"

namespace backmark::desk {

// The newest reckoning; no run: the show was never reckoned. `stale`: what bears on it changed
// since.
struct KeptRun {
  std::shared_ptr<const store::Run> run;
  bool stale = false;
};

// Read from disk. Problems: io.
Result<KeptRun> read_last_run(store::Store& store, const model::Show& show);

class Warm {
 public:
  // The show as it stands in the book of `store`, read again only if the book moved on.
  // Problems: those of store::Store::load.
  Result<std::shared_ptr<const model::Show>> show(store::Store& store);

  // The newest reckoning, judged against `show`, which came from here.
  Result<KeptRun> last_run(store::Store& store, const std::shared_ptr<const model::Show>& show);

  // Something dear that follows from the show and its newest reckoning alone: made by `make` at
  // the first call, the same value until either moves on. `make` returns a Result<T>; `name` is
  // its own for every T.
  template <class T, class Make>
  Result<std::shared_ptr<const T>> derived(store::Store& store,
                                           const std::string& name,
                                           Make&& make) {
    const auto now = store.moment();
    if (!now) {
      return now.problem();
    }
    const std::lock_guard lock(making_);
    if (*now != derived_at_) {
      derived_.clear();
      derived_at_ = *now;
    }
    std::any& slot = derived_[name];
    if (!slot.has_value()) {
      auto made = make();
      if (!made) {
        return made.problem();
      }
      slot = std::shared_ptr<const T>(std::make_shared<T>(std::move(*made)));
    }
    return std::any_cast<std::shared_ptr<const T>>(slot);
  }

 private:
  std::mutex reading_;
  std::shared_ptr<const model::Show> show_;
  std::int64_t run_number_ = -1;
  KeptRun run_;
  std::int64_t judged_at_ = -1;  // place of the show that run_.stale is about

  std::mutex making_;
  store::Moment derived_at_;
  std::map<std::string, std::any> derived_;
};

}  // namespace backmark::desk
