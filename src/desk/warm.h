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
  // The show as it stands in the book of `store`, read again only if the book moved on. Who
  // only looks is not kept waiting while another call reads it again: he gets it as it was.
  // Problems: those of store::Store::load.
  Result<std::shared_ptr<const model::Show>> show(store::Store& store, store::Access access);

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
    const std::shared_ptr<Slot> slot = slot_of(*now, name);
    const std::lock_guard lock(slot->making);  // others make other things meanwhile
    if (!slot->value.has_value()) {
      auto made = make();
      if (!made) {
        return made.problem();
      }
      slot->value = std::shared_ptr<const T>(std::make_shared<T>(std::move(*made)));
    }
    return std::any_cast<std::shared_ptr<const T>>(slot->value);
  }

 private:
  std::shared_ptr<const model::Show> held();

  std::mutex holding_;  // of show_, for a moment
  std::mutex loading_;  // for as long as the show is read
  std::shared_ptr<const model::Show> show_;

  std::mutex judging_;
  std::int64_t run_number_ = -1;
  KeptRun run_;
  std::int64_t judged_at_ = -1;  // place of the show that run_.stale is about

  struct Slot {
    std::mutex making;
    std::any value;
  };
  std::shared_ptr<Slot> slot_of(const store::Moment& now, const std::string& name);

  std::mutex finding_;
  store::Moment derived_at_;
  std::map<std::string, std::shared_ptr<Slot>> derived_;
};

}  // namespace backmark::desk
