#include "desk/warm.h"

#include <algorithm>

#include "model/changed.h"

namespace backmark::desk {

struct Warm::Kept {
  std::mutex holding;  // of show and same_since, for a moment
  std::mutex loading;  // for as long as the show is read or changed
  std::atomic<int> writes_in_hand = 0;
  std::shared_ptr<const model::Show> show;
  std::int64_t same_since = 0;

  std::mutex judging;
  std::int64_t run_number = -1;
  KeptRun run;
  std::int64_t judged_at = -1;  // same_since of the show that run.stale is about

  struct Last {
    store::Moment at;
    std::any value;
  };
  std::mutex finding;  // of what follows, for a moment
  store::Moment derived_at;
  std::map<std::string, std::shared_ptr<Slot>> derived;
  std::map<std::string, Last> last;  // the newest of each name
  std::map<std::string, std::any> judged_by_asker;
};

Warm::Warm() : kept_(std::make_shared<Kept>()) {}

Warm Warm::hurried(bool& earlier) const {
  Warm copy = *this;
  copy.earlier_ = &earlier;
  return copy;
}

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
  const std::lock_guard lock(kept_->holding);
  return kept_->show;
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
  std::unique_lock lock(kept_->loading, std::defer_lock);
  if (kept != nullptr && access == store::Access::look &&
      (kept_->writes_in_hand > 0 || !lock.try_lock())) {
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

std::shared_ptr<void> Warm::write_in_hand() {
  ++kept_->writes_in_hand;
  return {nullptr, [kept = kept_](void*) { --kept->writes_in_hand; }};
}

void Warm::hold(std::shared_ptr<const model::Show> show, bool bears) {
  const std::lock_guard lock(kept_->holding);
  kept_->show = std::move(show);
  kept_->same_since = bears ? kept_->show->position : kept_->same_since;
}

std::int64_t Warm::position() {
  const auto show = held();
  return show == nullptr ? -1 : show->position;
}

std::int64_t Warm::same_since(std::int64_t position) {
  const std::lock_guard lock(kept_->holding);
  const bool covered = kept_->show != nullptr && position >= kept_->same_since &&
                       position <= kept_->show->position;
  return covered ? kept_->same_since : position;
}

void Warm::applied(const model::Show& before, const model::Change& change) {
  const std::lock_guard lock(kept_->loading);
  const auto kept = held();
  if (kept == nullptr || kept->position != change.based_on()) {
    return;  // read again when it is asked for
  }
  hold(std::make_shared<const model::Show>(model::changed(*kept, change)),
       store::bears_on_reckoning(before, change));
}

std::shared_ptr<Warm::Slot> Warm::slot_of(const store::Moment& now, const std::string& name) {
  const std::lock_guard lock(kept_->finding);
  if (now.position < kept_->derived_at.position) {
    return std::make_shared<Slot>();  // of a show that others have moved on from: not kept
  }
  if (now != kept_->derived_at) {
    kept_->derived.clear();
    kept_->derived_at = now;
  }
  std::shared_ptr<Slot>& slot = kept_->derived[name];
  if (slot == nullptr) {
    slot = std::make_shared<Slot>();
  }
  return slot;
}

std::any Warm::last_of(const std::string& name) {
  const std::lock_guard lock(kept_->finding);
  const auto found = kept_->last.find(name);
  return found == kept_->last.end() ? std::any() : found->second.value;
}

void Warm::keep_last(const store::Moment& at, const std::string& name, const std::any& value) {
  constexpr std::size_t most = 16;
  const std::lock_guard lock(kept_->finding);
  Kept::Last& last = kept_->last[name];
  if (!last.value.has_value() || last.at.position <= at.position) {
    last = {at, value};
  }
  if (kept_->last.size() > most) {
    kept_->last.erase(std::min_element(kept_->last.begin(), kept_->last.end(),
                                       [](const auto& a, const auto& b) {
                                         return a.second.at.position < b.second.at.position;
                                       }));
  }
}

std::any Warm::judged_by_asker(const std::string& name) {
  const std::lock_guard lock(kept_->finding);
  const auto found = kept_->judged_by_asker.find(name);
  return found == kept_->judged_by_asker.end() ? std::any() : found->second;
}

void Warm::keep_for_asker(const std::string& name, std::any value) {
  const std::lock_guard lock(kept_->finding);
  kept_->judged_by_asker[name] = std::move(value);
}

Result<KeptRun> Warm::last_run(store::Store& store,
                               const std::shared_ptr<const model::Show>& show) {
  const auto now = store.moment();
  if (!now) {
    return now.problem();
  }
  const std::int64_t since = same_since(show->position);
  KeptRun run;
  {
    const std::lock_guard lock(kept_->judging);
    if (kept_->run_number != now->run) {
      auto read = read_last_run(store, *show);
      if (!read) {
        return read.problem();
      }
      kept_->run = std::move(*read);
      kept_->run_number = now->run;
      kept_->judged_at = since;
    }
    run = kept_->run;
    if (kept_->judged_at >= since || run.run == nullptr) {
      return run;
    }
    // What bears on it changed since it was judged: it is stale, unless all of that was taken
    // back. Whoever is in a hurry need not know so exactly.
    if (earlier_ != nullptr) {
      run.stale = true;
      return run;
    }
  }
  // Judged outside the lock: whoever judges may be a thread that gives way to all others, and
  // they would wait for it.
  run.stale = run.run->beliefs.digest != store::digest(*show);
  const std::lock_guard lock(kept_->judging);
  if (kept_->run_number == now->run && kept_->judged_at < since) {
    kept_->run.stale = run.stale;
    kept_->judged_at = since;
  }
  return run;
}

}  // namespace backmark::desk
