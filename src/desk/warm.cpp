#include "desk/warm.h"

namespace backmark::desk {

Result<KeptRun> read_last_run(store::Store& store, const model::Show& show) {
  auto run = store.last_run();
  if (!run) {
    return run.problem();
  }
  KeptRun kept;
  if (run->has_value()) {
    kept.run = std::make_shared<const store::Run>(std::move(**run));
    kept.stale = kept.run->beliefs.digest != store::digest(show);
  }
  return kept;
}

std::shared_ptr<const model::Show> Warm::held() {
  const std::lock_guard lock(holding_);
  return show_;
}

Result<std::shared_ptr<const model::Show>> Warm::show(store::Store& store,
                                                      store::Access access) {
  const auto now = store.moment();
  if (!now) {
    return now.problem();
  }
  auto kept = held();
  if (kept != nullptr && kept->position == now->position) {
    return kept;
  }
  std::unique_lock lock(loading_, std::defer_lock);
  if (kept != nullptr && access == store::Access::look && !lock.try_lock()) {
    return kept;
  }
  if (!lock.owns_lock()) {
    lock.lock();
  }
  kept = held();
  if (kept != nullptr && kept->position >= now->position) {
    return kept;
  }
  auto show = store.load();
  if (!show) {
    return show.problem();
  }
  kept = std::make_shared<const model::Show>(std::move(*show));
  const std::lock_guard moment(holding_);
  show_ = kept;
  return kept;
}

std::shared_ptr<Warm::Slot> Warm::slot_of(const store::Moment& now, const std::string& name) {
  const std::lock_guard lock(finding_);
  if (now != derived_at_) {
    derived_.clear();
    derived_at_ = now;
  }
  std::shared_ptr<Slot>& slot = derived_[name];
  if (slot == nullptr) {
    slot = std::make_shared<Slot>();
  }
  return slot;
}

Result<KeptRun> Warm::last_run(store::Store& store,
                               const std::shared_ptr<const model::Show>& show) {
  const std::lock_guard lock(judging_);
  const auto now = store.moment();
  if (!now) {
    return now.problem();
  }
  if (run_number_ != now->run) {
    auto run = read_last_run(store, *show);
    if (!run) {
      return run.problem();
    }
    run_ = std::move(*run);
    run_number_ = now->run;
    judged_at_ = show->position;
  }
  if (judged_at_ < show->position && run_.run != nullptr) {
    run_.stale = run_.run->beliefs.digest != store::digest(*show);
    judged_at_ = show->position;
  }
  return run_;
}

}  // namespace backmark::desk
