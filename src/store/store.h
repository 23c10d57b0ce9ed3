// A show on disk: load it as one value, apply a change, read the book of changes, search.
// Nothing else is offered, so that another kind of store can stand beside this one.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/file.h"
#include "base/result.h"
#include "model/belief.h"
#include "model/change.h"
#include "model/show.h"

namespace backmark::store {

// One line of the book of changes.
struct Entry {
  std::int64_t position = 0;
  std::int64_t at = 0;  // seconds since 1970-01-01 UTC
  std::string who;
  std::string operation;
  std::string summary;
  std::int64_t undoes = 0;     // the change that this one takes back; 0: none
  std::int64_t undone_by = 0;  // the change that takes this one back now; 0: it holds
  // JSON. Of a piece: added, superseded, replaced (was, is) and withdrawn (was, reason), each
  // with the values. Of the whole show: how many records of each kind were added, and the first
  // 200 replaced or withdrawn ("more": true if there were more).
  std::string detail;
};

// A piece that a search found, best first.
struct Hit {
  model::Id<model::Piece> piece;
  std::string number;
  std::string where;  // the words around the match
};

// A reckoning as it was recorded.
struct Run {
  model::Beliefs beliefs;               // curves, makers, places, limits, conflicts
  std::vector<model::Phrases> phrases;  // in the order of beliefs.pieces
  std::int64_t at = 0;
  std::int64_t position = 0;  // of the show that was weighed
};

// A change as other pages need to hear of it.
struct Moved {
  std::int64_t position = 0;
  std::int64_t at = 0;
  std::string who;
  std::string operation;
  std::string summary;
  std::vector<std::string> numbers;  // of the pieces it touched, at most 100
  std::int64_t pieces = 0;           // how many it touched
};

struct Moment {
  std::int64_t position = 0;
  std::int64_t run = 0;
  friend bool operator==(const Moment&, const Moment&) = default;
};

// A request that was done already.
struct Kept {
  std::int64_t position = 0;
  std::string answer;  // JSON; empty if the program ended before it was laid down
};

enum class Access { look, change };

// What somebody knew who now writes from afar: two people, or one page asking twice, must not
// undo each other.
struct Expectation {
  // The place in the book that they had seen: a later change of the same thing of the same
  // piece stands in the way of the next apply(). None: the show as it was loaded.
  std::optional<std::int64_t> seen;
  // A name made up by the asker for this one request; the next apply() keeps it, and refuses
  // it if it is kept already. Empty: none.
  std::string once;
};

// How a change is taken back.
struct Undoing {
  Entry undone;  // without its detail
  model::Change change;
};

// The version of show.db that this program writes.
int newest_version();

// Makes the folder, show.db, photos/ and prints/. Problems: conflict (a show is there, or the
// folder holds other things), io.
Result<Done> create(const Path& folder);

class Store {
 public:
  // Problems: not_found (no such folder, not a show), refused (made by a newer program), io
  // (locked, damaged, no right to write). A show of an older version is upgraded in one
  // transaction after a copy show.db.before-N is laid beside it; with Access::look too, and
  // then nothing else is written.
  static Result<Store> open(const Path& folder, Access access);

  Store(Store&&) noexcept;
  Store& operator=(Store&&) noexcept;
  ~Store();

  // The show as it stands, settled. Problems: io (locked; damaged: a record names one that is
  // not there). Nothing is written.
  Result<model::Show> load();

  // Writes the change in one transaction, the book first. Problems: conflict (the show moved on
  // since the change was begun; a number or key is taken), refused (an observation, claim or
  // event would be overwritten), not_found (a record to be superseded or withdrawn does not
  // hold; a record names a piece, part, maker, source ... that is not in the show or is of
  // another kind), io. After a Problem the show is as it was. An empty change writes nothing.
  Result<Done> apply(const model::Change& change, const std::string& who, std::int64_t at);

  // The last `count` entries, newest first; with a piece only those that touch it.
  Result<std::vector<Entry>> book(std::size_t count, model::Id<model::Piece> piece = {});

  // The change that takes back the one at `position` of the book; without a position, the
  // newest that `who` made and that holds, steps back set aside. It withdraws what that one
  // added, writes anew what it replaced, and says again what it superseded or withdrew. Give it
  // to apply(). Taking back a step back does the first again. Problems: not_found (no such
  // change), conflict (taken back already; a later change touched the same records), io.
  Result<Undoing> undoing(const model::Show& show,
                          std::optional<std::int64_t> position,
                          const std::string& who);

  // The place of the step back that `who` took last and that still holds, if he changed nothing
  // else since: undoing() of it does the change again. Problems: not_found, io.
  Result<std::int64_t> last_step_back(const std::string& who);

  // Pieces whose number, title, marks, notes or words hold every word of `text`.
  Result<std::vector<Hit>> search(std::string_view text, std::size_t count);

  // Keeps a reckoning; the newest few are kept, older ones go. Not a change of the show.
  Result<Done> record_run(const Run& run);
  // The newest reckoning, if any.
  Result<std::optional<Run>> last_run();

  // Called after every apply() that wrote, with what it wrote.
  void tell(std::function<void(const model::Change&)> applied);

  // Binds every apply() that follows. Problems then: conflict, with the piece's number in
  // `where`.
  void expect(Expectation expectation);
  // Where in the book a request of that name was kept, and what answer was laid beside it.
  Result<std::optional<Kept>> kept(const std::string& once);
  Result<Done> keep_answer(const std::string& once, const std::string& answer);

  // The newest place in the book, and the number of the newest reckoning (0: none).
  Result<Moment> moment();
  // What changed after a place in the book, oldest first, at most `count`.
  Result<std::vector<Moved>> moved_after(std::int64_t position, std::size_t count);

  const Path& folder() const;

 private:
  struct Inside;
  explicit Store(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

// A digest of everything in the show that bears on the reckoning. Equal digests: the same
// answer.
std::string digest(const model::Show& show);

// Whether the digest of `before` moves with the change. Where a change takes nothing back but
// what another brought, it may say yes although the digest comes out the same.
bool bears_on_reckoning(const model::Show& before, const model::Change& change);

}  // namespace backmark::store
