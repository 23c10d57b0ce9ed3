#include "desk/warm.h"

#include "model/changed.h"

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
  hold(kept, true);
  return kept;
}

void Warm::hold(std::shared_ptr<const model::Show> show, bool bears) {
  const std::lock_guard lock(holding_);
  show_ = std::move(show);
  same_since_ = bears ? show_->position : same_since_;
}

std::int64_t Warm::position() {
  const auto show = held();
  return show == nullptr ? -1 : show->position;
}

std::int64_t Warm::same_since(std::int64_t position) {
  const std::lock_guard lock(holding_);
  const bool covered =
      show_ != nullptr && position >= same_since_ && position <= show_->position;
  return covered ? same_since_ : position;
}

void Warm::applied(const model::Show& before, const model::Change& change) {
  const std::lock_guard lock(loading_);
  const auto kept = held();
  if (kept == nullptr || kept->position != change.based_on()) {
    return;  // read again when it is asked for
  }
  hold(std::make_shared<const model::Show>(model::changed(*kept, change)),
       store::bears_on_reckoning(before, change));
}

std::shared_ptr<Warm::Slot> Warm::slot_of(const store::Moment& now, const std::string& name) {
  const std::lock_guard lock(finding_);
  if (now.position < derived_at_.position) {
    return std::make_shared<Slot>();  // of a show that others have moved on from: not kept
  }
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
    judged_at_ = same_since(show->position);
  }
  const std::int64_t since = same_since(show->position);
  if (judged_at_ < since && run_.run != nullptr) {
    run_.stale = run_.run->beliefs.digest != store::digest(*show);
    judged_at_ = since;
  }
  return run_;
}

}  // namespace backmark::desk
