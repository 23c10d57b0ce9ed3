// A show kept in memory between the calls of one door, so that a page need not wait for it to
// be read. Safe to use from several threads. Copies share what is kept.
#pragma once

#include <any>
#include <atomic>
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

// Whether an asker must have a thing as the show stands, or takes what was last made of it.
enum class Wants { current, last_made };

class Warm {
 public:
  Warm();

  // The same, for one call that would rather have what was last made of an earlier show than
  // wait, of things that are asked for with Wants::last_made. `earlier` becomes true if that is
  // what it got, and must outlive the copy.
  Warm hurried(bool& earlier) const;

  // The show as it stands in the book of `store`, read again only if the book moved on. Who
  // only looks is not kept waiting while another call reads it again: he gets it as it was.
  // Problems: those of store::Store::load.
  Result<std::shared_ptr<const model::Show>> show(store::Store& store, store::Access access);

  // For as long as what it gives is kept, a change is being written and will be made to the
  // show in memory: who only looks gets the show as it was, instead of reading all of it again
  // because the book is a moment ahead of the memory.
  std::shared_ptr<void> write_in_hand();

  // The place in the book of the show in memory; -1: none was read yet.
  std::int64_t position();

  // Makes a change that the store has just written to the show in memory, so that it need not
  // be read again. `before` is what the change was begun from.
  void applied(const model::Show& before, const model::Change& change);

  // The newest reckoning, judged against `show`, which came from here. For who is in a hurry it
  // may be called stale where all that bore on it was taken back since.
  Result<KeptRun> last_run(store::Store& store, const std::shared_ptr<const model::Show>& show);

  // Something that its asker knows to be out of date or not: the last one made under `name`
  // while `holds(it)`, else a new one of `make`, which gives a shared_ptr<const T>. Two that
  // ask at once may both make it.
  template <class T, class Holds, class Make>
  std::shared_ptr<const T> kept(const std::string& name, const Holds& holds, const Make& make) {
    if (const std::any before = judged_by_asker(name); before.has_value()) {
      auto known = std::any_cast<std::shared_ptr<const T>>(before);
      if (holds(*known)) {
        return known;
      }
    }
    std::shared_ptr<const T> made = make();
    keep_for_asker(name, made);
    return made;
  }

  // Something dear that follows from the newest reckoning and from what of the show bears on
  // reckoning (store::digest) alone: made by `make` at the first call, the same value until
  // either moves on; a pick or a section leaves it alive. `make` returns a Result<T>; `name` is
  // its own for every T. `show` is the one that `make` looks at.
  template <class T, class Make>
  Result<std::shared_ptr<const T>> derived(store::Store& store,
                                           const model::Show& show,
                                           const std::string& name,
                                           Make&& make,
                                           Wants wants = Wants::current) {
    auto now = store.moment();
    if (!now) {
      return now.problem();
    }
    now->position = same_since(show.position);
    const std::shared_ptr<Slot> slot = slot_of(*now, name);
    if (wants == Wants::last_made && earlier_ != nullptr && !slot->made) {
      if (const std::any before = last_of(name); before.has_value()) {
        *earlier_ = true;
        return std::any_cast<std::shared_ptr<const T>>(before);
      }
    }
    const std::lock_guard lock(slot->making);  // others make other things meanwhile
    if (!slot->made) {
      auto made = make();
      if (!made) {
        return made.problem();
      }
      slot->value = std::shared_ptr<const T>(std::make_shared<T>(std::move(*made)));
      slot->made = true;
      keep_last(*now, name, slot->value);
    }
    return std::any_cast<std::shared_ptr<const T>>(slot->value);
  }

 private:
  struct Slot {
    std::mutex making;
    std::any value;
    std::atomic<bool> made = false;  // from then on `value` stays
  };
  struct Kept;

  std::shared_ptr<const model::Show> held();
  void hold(std::shared_ptr<const model::Show> show, bool bears);
  // The earliest place in the book from which on to `position`, as far as is known, nothing
  // changed that bears on the reckoning.
  std::int64_t same_since(std::int64_t position);
  std::shared_ptr<Slot> slot_of(const store::Moment& now, const std::string& name);
  // The newest of that name that was made, of whichever show; nothing if none was.
  std::any last_of(const std::string& name);
  void keep_last(const store::Moment& at, const std::string& name, const std::any& value);
  std::any judged_by_asker(const std::string& name);  // of kept(); nothing if none was made
  void keep_for_asker(const std::string& name, std::any value);

  std::shared_ptr<Kept> kept_;
  bool* earlier_ = nullptr;  // of hurried()
};

}  // namespace backmark::desk
