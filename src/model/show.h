// A show as one value, as it stands at one place in the book of changes.
#pragma once

#include <algorithm>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <unordered_map>
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

// The texts that records name by Word. Word 0 is the empty text.
class Pool {
 public:
  Pool() : texts_{""} {}
  std::string_view text(Word word) const { return texts_[word.value]; }
  // The word for a text, if the pool has it (the empty text is Word 0).
  Word find(std::string_view text) const;
  // The word for a text, taken in if new.
  Word take(std::string_view text);
  std::size_t size() const { return texts_.size(); }
  void reserve(std::size_t count);

 private:
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const {
      return std::hash<std::string_view>{}(text);
    }
  };
  std::vector<std::string> texts_;
  std::unordered_map<std::string, std::uint32_t, Hash, std::equal_to<>> index_;
};

// The show. Records of each kind stand in the order of their ids; observations stand by piece,
// then id. Only what holds now is here: superseded and withdrawn records are in the book.
// Build one with `settle` after filling `records`; then treat it as unchangeable.
class Show {
 public:
  Show() = default;
  // Moves, never copies: the index looks into the records.
  Show(Show&&) = default;
  Show& operator=(Show&&) = default;
  Show(const Show&) = delete;
  Show& operator=(const Show&) = delete;

  Records records;
  Pool pool;
  std::int64_t position = 0;  // the place in the book of changes it was read at
  std::int32_t next_id = 1;   // the first id not yet used

  template <class T>
  const std::vector<T>& all() const {
    return std::get<std::vector<T>>(records);
  }
  template <class T>
  std::vector<T>& all() {
    return std::get<std::vector<T>>(records);
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

  // Sorts and indexes. Call once after filling `records`.
  void settle();

 private:
  std::unordered_map<std::string_view, std::size_t> piece_by_number_;
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
