// A show as one value, as it stands at one place in the book of changes.
#pragma once

#include <algorithm>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <vector>

#include "base/shared.h"
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

// The show. Records of each kind stand in the order of their ids; observations stand by piece,
// then id. Only what holds now is here: superseded and withdrawn records are in the book.
// Build one with `settle` after filling it; then treat it as unchangeable. A copy costs little:
// it shares every kind of record that is not written to.
class Show {
 public:
  Pool pool;
  std::int64_t position = 0;  // the place in the book of changes it was read at
  std::int32_t next_id = 1;   // the first id not yet used

  template <class T>
  const std::vector<T>& all() const {
    return std::get<Rows<T>>(kinds_).rows.read();
  }
  // To be changed, then settled.
  template <class T>
  std::vector<T>& all() {
    auto& kind = std::get<Rows<T>>(kinds_);
    kind.settled = false;
    return kind.rows.write();
  }

  // All records of one kind, in place of what was there; then settle.
  template <class T>
  void fill(std::vector<T> rows) {
    std::get<Rows<T>>(kinds_) = {Shared(std::move(rows)), false};
  }

  // The records of every kind, in place of what was there; then settle.
  void fill(Records records) {
    std::apply([&](auto&... rows) { (fill(std::move(rows)), ...); }, records);
  }

  // Calls visit(rows) with the records of every kind, in the order of Records.
  template <class Visit>
  void each_kind(Visit&& visit) const {
    std::apply([&](const auto&... kinds) { (visit(kinds.rows.read()), ...); }, kinds_);
  }
  // The same, to be changed, then settled.
  template <class Visit>
  void change_each_kind(Visit&& visit) {
    each_kind([&]<class T>(const std::vector<T>&) { visit(all<T>()); });
  }

  // The record with this id, or null.
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
  template <class T>
  struct Rows {
    Shared<std::vector<T>> rows;
    bool settled = true;
  };
  template <class Kinds>
  struct RowsOf;
  template <class... T>
  struct RowsOf<std::tuple<std::vector<T>...>> {
    using type = std::tuple<Rows<T>...>;
  };
  // Looks into the numbers of these pieces, and so keeps them.
  struct ByNumber {
    Shared<std::vector<Piece>> pieces;
    std::unordered_map<std::string_view, std::size_t> at;
  };

  RowsOf<Records>::type kinds_;
  std::shared_ptr<const ByNumber> by_number_ = std::make_shared<ByNumber>();
};

template <class T>
const T* Show::find(Id<T> id) const {
  const auto& rows = all<T>();
  if constexpr (std::is_same_v<T, Piece> || std::is_same_v<T, Character> ||
                std::is_same_v<T, Maker> || std::is_same_v<T, Source> ||
                std::is_same_v<T, Section> || std::is_same_v<T, Lender> ||
                std::is_same_v<T, Case>) {
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
