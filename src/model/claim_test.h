// What the pieces and the sources say of a claim, as rooms hand it to each other.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/year.h"
#include "model/knowledge.h"

namespace backmark::model {

// A claim that is asked about; no claim on file need say so.
struct AskedClaim {
  enum class Kind {
    first,       // the first was made in `year`, by `maker`
    all_by,      // every piece with `value` of `character` is by `maker`
    not_before,  // `value` was not used before `year`
    design,      // the design `value` is `maker`'s: the oldest piece with it is by that hand
  };
  Kind kind = Kind::first;
  Word form;  // only pieces of this form; none: every piece
  Id<Character> character;
  Word value;
  Id<Maker> maker;  // none: by anyone
  std::optional<Year> year;
  std::string words;  // as understood: "the first was made in 1946 by Oda Vessen"
};

// A piece that speaks, most loudly first.
struct ClaimCarrier {
  Id<Piece> piece;
  double p = 0;          // chance that this piece speaks against the claim (design: for it)
  double p_without = 0;  // of the claim, were this piece not on the table
};

// A source that speaks for or against.
struct ClaimVoice {
  Id<Source> source;
  bool for_it = false;
  double reliability = 0;
  Id<Source> origin;     // whom it has it from in the end; itself, if from nobody
  bool counted = false;  // speaks for its origin; the others only repeat it
  double p_without = 0;  // of the claim, had this source kept silent
  std::string says;
};

// What would move the answer, and to where.
struct ClaimTurn {
  std::string what;
  double p = 0;
};

// An answer that a look may bring, and where it would leave the claim.
struct ClaimAnswer {
  std::string value;  // "wire", "looked for, none", "22 to 25 mm"
  double p = 0;       // chance of this answer
  double p_claim = 0;
};

// A look at a piece that carries the claim.
struct ClaimLook {
  Id<Piece> piece;
  Word part;  // kind of part; none: the piece as a whole
  Id<Character> character;
  double moves = 0;    // mean distance between the answers and their mean, as a chance
  double minutes = 0;  // at the table, without fetching
  bool again = false;  // re-check of something recorded
  std::vector<ClaimAnswer> answers;  // likeliest first
};

struct ClaimTest {
  AskedClaim claim;
  double p = 0;              // of the claim, from pieces and sources together
  double p_pieces = 0;       // the pieces alone, leaning together
  double p_independent = 0;  // the pieces alone, each by itself
  double p_carried = 0;      // the pieces with at least 1 chance in 20 alone
  double expected = 0;       // mean number of pieces that speak against (all_by: by others)
  std::size_t pieces = 0;    // on the table
  std::vector<ClaimCarrier> carried_by;
  std::vector<ClaimVoice> sources;
  std::vector<ClaimTurn> turns;
  std::vector<ClaimLook> looks;  // most moved a minute first
  std::vector<std::string> notes;
};

}  // namespace backmark::model
