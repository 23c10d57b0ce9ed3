// A show as one value, as it stands at one place in the book of changes.
#pragma once

#include <algorithm>
#include <array>
#include <atomic>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <unordered_map>
#include <utility>
#include <vector>

#include "model/display.h"
#include "model/exhibit.h"
#include "model/knowledge.h"
#include "model/piece.h"
#include "model/task.h"

namespace backmark::model {

// Every kind of record, once. Whoever walks over all kinds walks over this list.
using Records = std::tuple<std::vector<Piece>,
                           std::vector<Part>,
                           std::vector<Observation>,
                           std::vector<Mark>,
                           std::vector<Photograph>,
                           std::vector<Note>,
                           std::vector<Row>,
                           std::vector<Character>,
                           std::vector<Lineage>,
                           std::vector<Window>,
                           std::vector<Maker>,
                           std::vector<Source>,
                           std::vector<Claim>,
                           std::vector<Event>,
                           std::vector<Section>,
                           std::vector<Pick>,
                           std::vector<Lender>,
                           std::vector<Loan>,
                           std::vector<ValueOpinion>,
                           std::vector<Condition>,
                           std::vector<Permission>,
                           std::vector<Overruling>,
                           std::vector<Case>,
                           std::vector<Placement>,
                           std::vector<Fixture>,
                           std::vector<LightReading>,
                           std::vector<Exposure>,
                           std::vector<Requirement>,
                           std::vector<Task>,
                           std::vector<Setting>>;

// The texts that records name by Word. Word 0 is the empty text. A copy shares all texts but
// those taken in since settle() last found them many.
class Pool {
 public:
  Pool() { newer_.texts = {""}; }
  std::string_view text(Word word) const {
    return word.value < first_newer_ ? older_->texts[word.value]
                                     : newer_.texts[word.value - first_newer_];
  }
  // The word for a text, if the pool has it (the empty text is Word 0).
  Word find(std::string_view text) const;
  // The word for a text, taken in if new.
  Word take(std::string_view text);
  std::size_t size() const { return first_newer_ + newer_.texts.size(); }
  void reserve(std::size_t count);
  // Lays newer texts to the older ones once they are a fair part of them, so that on the whole
  // no text is copied more than a few times, however often the pool is.
  void settle();

 private:
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const {
      return std::hash<std::string_view>{}(text);
    }
  };
  struct Texts {
    std::vector<std::string> texts;
    std::unordered_map<std::string, std::uint32_t, Hash, std::equal_to<>> index;  // to Word
  };
  std::shared_ptr<const Texts> older_;
  std::uint32_t first_newer_ = 0;  // how many are older
  Texts newer_;
};

// Kinds that are asked for by piece stand by piece, then id; claims by what they are about; the
// others by id.
template <class T>
constexpr bool stands_by_piece =
    std::is_same_v<T, Observation> || std::is_same_v<T, Part> || std::is_same_v<T, Mark> ||
    std::is_same_v<T, Photograph> || std::is_same_v<T, Note> || std::is_same_v<T, Event>;

// How many kinds of record there are, and the place of one of them among Records.
template <class... T>
consteval std::size_t count_of(const std::tuple<std::vector<T>...>*) {
  return sizeof...(T);
}
template <class Wanted, class... T>
consteval std::size_t place_of(const std::tuple<std::vector<T>...>*) {
  std::size_t place = 0;
  (void)((std::is_same_v<T, Wanted> || (++place, false)) || ...);
  return place;
}

// The show. Only what holds now is here: superseded and withdrawn records are in the book.
// Build one with `settle` after filling it; then treat it as unchangeable. A copy costs little:
// it shares every kind of record that is not written to. One that was moved from can only be
// assigned to.
class Show {
 public:
  Show();

  Pool pool;
  std::int64_t position = 0;  // the place in the book of changes it was read at
  std::int32_t next_id = 1;   // the first id not yet used

  template <class T>
  const std::vector<T>& all() const {
    return *static_cast<const std::vector<T>*>(kinds_[place<T>].rows.get());
  }
  // To be changed, then settled.
  template <class T>
  std::vector<T>& all() {
    Kind& kind = kinds_[place<T>];
    kind.settled = false;
    if (kind.rows.use_count() != 1) {
      kind.rows = std::make_shared<std::vector<T>>(std::as_const(*this).template all<T>());
    }
    // The last other holder may have let go just now; what it read is read before we write.
    std::atomic_thread_fence(std::memory_order_acquire);
    return *static_cast<std::vector<T>*>(kind.rows.get());
  }

  // All records of one kind, or of every kind, in place of what was there; then settle.
  template <class T>
  void fill(std::vector<T> rows) {
    kinds_[place<T>] = {std::make_shared<std::vector<T>>(std::move(rows)), false};
  }
  void fill(Records records);

  // Calls visit(rows) with the records of every kind, in the order of Records.
  template <class Visit>
  void each_kind(Visit&& visit) const {
    [&]<class... T>(const std::tuple<std::vector<T>...>*) {
      (visit(all<T>()), ...);
    }(static_cast<const Records*>(nullptr));
  }
  // The same, to be changed, then settled.
  template <class Visit>
  void change_each_kind(Visit&& visit) {
    each_kind([&]<class T>(const std::vector<T>&) { visit(all<T>()); });
  }

  // The record with this id, or null; linear for kinds that do not stand by id.
  template <class T>
  const T* find(Id<T> id) const;

  // The record with this key (Maker, Source, Character, Section, Case, Setting), or null.
  const Maker* maker(std::string_view key) const;
  const Source* source(std::string_view key) const;
  const Character* character(std::string_view key) const;
  const Piece* piece(std::string_view number) const;
  // A setting's value; empty if unset.
  std::string_view setting(std::string_view key) const;

  std::string_view text(Word word) const { return pool.text(word); }

  // All records of one kind that belong to a piece.
  std::span<const Observation> observations_of(Id<Piece> piece) const;
  std::span<const Part> parts_of(Id<Piece> piece) const;
  std::span<const Mark> marks_of(Id<Piece> piece) const;
  std::span<const Photograph> photographs_of(Id<Piece> piece) const;
  std::span<const Note> notes_of(Id<Piece> piece) const;
  std::span<const Event> events_of(Id<Piece> piece) const;
  std::span<const Claim> claims_on(Id<Piece> piece) const;  // about == About::piece

  // Sorts and indexes what was changed. Call once after changing.
  void settle();

 private:
  // The type of the rows is told by the place alone: a tuple of thirty kinds in each of the
  // hundreds of bodies that include this costs a tenth of the time they take to compile.
  struct Kind {
    std::shared_ptr<void> rows;  // std::vector<T>; never null
    bool settled = true;
  };
  static constexpr std::size_t kind_count = count_of(static_cast<const Records*>(nullptr));
  template <class T>
  static constexpr std::size_t place = place_of<T>(static_cast<const Records*>(nullptr));

  // Looks into the numbers of these pieces, and so keeps them.
  struct ByNumber {
    std::shared_ptr<const void> pieces;
    std::unordered_map<std::string_view, std::size_t> at;
  };

  static std::array<Kind, kind_count> no_records();

  std::array<Kind, kind_count> kinds_;
  std::shared_ptr<const ByNumber> by_number_;
};

template <class T>
const T* Show::find(Id<T> id) const {
  const auto& rows = all<T>();
  if constexpr (!stands_by_piece<T> && !std::is_same_v<T, Claim>) {
    const auto at = std::lower_bound(rows.begin(), rows.end(), id,
                                     [](const T& row, Id<T> want) { return row.id < want; });
    return at != rows.end() && at->id == id ? &*at : nullptr;
  } else {
    const auto at =
        std::find_if(rows.begin(), rows.end(), [id](const T& row) { return row.id == id; });
    return at != rows.end() ? &*at : nullptr;
  }
}

}  // namespace backmark::model
