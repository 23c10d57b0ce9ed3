// The phrases of a piece, ready for every output.
#pragma once

#include <map>
#include <vector>

#include "model/belief.h"
#include "model/show.h"

namespace backmark::words {

// Phrases of pieces by the piece's id; those frozen for press come back in the next call.
class PhraseBook {
 public:
  void put(model::Id<model::Piece> piece, model::Phrases phrases);
  // "not dated", "unrecorded maker" for a piece that was never reckoned.
  const model::Phrases& of(model::Id<model::Piece> piece) const;
  const model::Phrases* find(model::Id<model::Piece> piece) const;
  std::size_t size() const { return phrases_.size(); }

 private:
  std::map<std::int32_t, model::Phrases> phrases_;
};

// Year, maker and place in words. The curator's own phrase, if there is one, stands in place of
// the table's, with row 0 and the initials. `frozen`: what the last printing said.
model::Phrases phrase_piece(const model::Show& show,
                            const model::PieceBelief& belief,
                            const model::Phrases* frozen = nullptr);

// For every piece of the show, reckoned or not.
PhraseBook phrase_all(const model::Show& show,
                      const model::Beliefs& beliefs,
                      const PhraseBook& frozen = {});

// What the table itself would say where the curator overruled it: for the note on method.
struct Overruled {
  model::Id<model::Piece> piece;
  std::string ours;    // the curator's phrase
  std::string tables;  // the table's
  std::string reason;
  std::string initials;
};
std::vector<Overruled> overruled(const model::Show& show, const model::Beliefs& beliefs);

}  // namespace backmark::words
