// What shall be different: built by an operation, written by the store in one transaction,
// first to the book of changes, then to the tables.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "model/show.h"

namespace backmark::model {

// Takes a record out of the show; the book keeps it, with the reason.
struct Withdrawal {
  std::int32_t id = 0;
  std::string reason;
};

// A record that stands again under a new id.
struct Restored {
  std::int32_t id = 0;
  std::int32_t was = 0;
};

// Build one from the show it changes. The store refuses it if the show moved on meanwhile.
//   Change change(show, "import", "pieces.csv");
//   const auto piece = change.add(Piece{.number = "ES 1"});
//   change.add(Observation{.piece = piece, ...});
class Change {
 public:
  Change(const Show& show, std::string operation, std::string summary);

  // Gives the record its id and keeps it. Observations, claims and events that name
  // `supersedes` take the place of an older one.
  template <class T>
  Id<T> add(T record) {
    record.id = Id<T>{next_id_++};
    std::get<std::vector<T>>(added_).push_back(std::move(record));
    return std::get<std::vector<T>>(added_).back().id;
  }

  // Writes a record of the same id anew. Refused by the store for observations, claims and
  // events: those are superseded.
  template <class T>
  void replace(T record) {
    std::get<std::vector<T>>(replaced_).push_back(std::move(record));
  }

  template <class T>
  void withdraw(Id<T> id, std::string reason) {
    withdrawn_.push_back({id.value, std::move(reason)});
  }

  // Says anew a record that ended; `was` is its old id.
  template <class T>
  Id<T> restore(T record) {
    const std::int32_t was = record.id.value;
    const Id<T> id = add(std::move(record));
    restored_.push_back({id.value, was});
    return id;
  }

  // That this change takes back the one at a place of the book.
  void takes_back(std::int64_t position) { undoes_ = position; }

  // The word for a text: the show's own, or a new one that travels with this change.
  Word word(std::string_view text);
  // The text of a word of the show or of this change.
  std::string_view text(Word word) const;

  bool empty() const;

  std::int64_t based_on() const { return based_on_; }
  const std::string& operation() const { return operation_; }
  const std::string& summary() const { return summary_; }
  const Records& added() const { return added_; }
  const Records& replaced() const { return replaced_; }
  const std::vector<Withdrawal>& withdrawn() const { return withdrawn_; }
  const std::vector<Restored>& restored() const { return restored_; }
  // 0: it takes back none.
  std::int64_t undoes() const { return undoes_; }
  // New texts; the first has the word `first_new_word()`, and so on.
  const std::vector<std::string>& new_words() const { return new_words_; }
  std::uint32_t first_new_word() const { return first_new_word_; }
  std::int32_t next_id() const { return next_id_; }

 private:
  const Pool* pool_;  // of the show, which outlives the change
  std::int64_t based_on_;
  std::int32_t next_id_;
  std::uint32_t first_new_word_;
  std::string operation_;
  std::string summary_;
  Records added_;
  Records replaced_;
  std::vector<Withdrawal> withdrawn_;
  std::vector<Restored> restored_;
  std::int64_t undoes_ = 0;
  std::vector<std::string> new_words_;
  std::unordered_map<std::string, std::uint32_t> new_word_index_;
};

}  // namespace backmark::model
