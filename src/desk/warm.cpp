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

Result<std::shared_ptr<const model::Show>> Warm::show(store::Store& store) {
  const std::lock_guard lock(reading_);
  const auto now = store.moment();
  if (!now) {
    return now.problem();
  }
  if (show_ == nullptr || show_->position != now->position) {
    auto show = store.load();
    if (!show) {
      return show.problem();
    }
    show_ = std::make_shared<const model::Show>(std::move(*show));
  }
  return show_;
}

Result<KeptRun> Warm::last_run(store::Store& store,
                               const std::shared_ptr<const model::Show>& show) {
  const std::lock_guard lock(reading_);
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
  if (judged_at_ != show->position && run_.run != nullptr) {
    run_.stale = run_.run->beliefs.digest != store::digest(*show);
    judged_at_ = show->position;
  }
  return run_;
}

}  // namespace backmark::desk
