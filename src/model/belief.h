// What the reckoning says, as rooms hand it to each other.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/year.h"
#include "model/id.h"
#include "model/knowledge.h"
#include "model/piece.h"

namespace backmark::model {

// Chances over the years of `span`: one a year, non-negative, summing to 1.
struct YearBelief {
  YearSpan span;
  std::vector<double> p;

  // The earliest year whose cumulative chance reaches `share`.
  Year at(double share) const { return quantile(span, p, share); }
  // The chance that the year lies between first and last, both included.
  double inside(Year first, Year last) const;
  bool empty() const { return p.empty(); }
};

// In what capacity a maker is named: the hand itself, the shop, or someone near.
struct MakerChance {
  Id<Maker> maker;
  double p = 0;
};

// Chances over makers, most likely first; they and `unrecorded` sum to 1.
struct MakerBelief {
  std::vector<MakerChance> makers;
  double unrecorded = 1;
  // Whether a mark, a document or an accepted claim on file names the first maker.
  bool documented = false;
  double of(Id<Maker> maker) const;
};

// A place and how sure: P(made there).
struct PlaceBelief {
  Word place;
  double p = 0;
};

// One thing that bears on year or maker, and how much. `bits` and `years_moved` are what the
// answer loses when this line alone is left out.
struct EvidenceLine {
  std::string what;         // "Fitting: figure-eight wire"
  std::string source;       // "the piece, by loupe", "dealer's card, 1974"
  Id<Character> character;  // none unless an observation
  std::int32_t record =
      0;                   // id of the observation, claim, event or mark; 0 for the show itself
  double bits_year = 0;    // Kullback-Leibler distance, with against without, in bits
  double years_moved = 0;  // median with, less median without
  double width_change = 0;    // years of the 80 % span, with less without
  double maker_log_odds = 0;  // natural log; change of the leading maker's odds
  double reliability = 1;     // chance that the line is to be believed, after everything
  bool disagrees = false;     // set aside by the rest of the evidence
  YearBelief alone;           // where this line by itself lets the year lie; may be empty
};

// A dated or signed piece that speaks for the answer.
struct Comparandum {
  Id<Piece> piece;
  double share = 0;                 // of all comparanda
  std::vector<std::string> why;     // "same fitting", "shell on both": what is alike
  std::vector<std::string> unlike;  // what differs most
};

// Evidence on one piece that does not fit together.
struct Misfit {
  Id<Piece> piece;
  Word part;                // the likely odd one out; none: a statement
  std::int32_t record = 0;  // id of the claim or event, if a statement
  std::string what;         // in words
  double p = 0;             // chance that it is the odd one
};

// Everything reckoned of one piece.
struct PieceBelief {
  Id<Piece> piece;
  YearBelief year;
  MakerBelief maker;
  PlaceBelief place;
  bool dated = false;   // a year can be said at all
  std::string limit;    // reason of the strictest limit: "acquired in 1974"; empty: none
  double conflict = 0;  // chance that something on it does not fit
};

// A whole reckoning, in the order of the show's pieces.
struct Beliefs {
  std::vector<PieceBelief> pieces;
  std::vector<Misfit> misfits;
  std::vector<std::string> notes;  // doubts to show beside the numbers
  std::uint64_t seed = 0;
  std::string version;
  std::string digest;  // of everything that went in; another digest means stale
  std::int32_t chains = 0;
  double rhat_max = 0;  // 0: nothing was sampled
  double ess_min = 0;
  bool converged = true;
  double seconds = 0;
  double peak_mb = 0;

  const PieceBelief* of(Id<Piece> piece) const;
};

// The phrases that every printed output uses.
struct Phrases {
  std::string made;   // "about 1954"
  std::string maker;  // "attributed to Oda Vessen"
  std::string place;  // "Ennet Quay", "probably Long Quay"; empty: not said
  int made_row = 0;   // row of the published table that held, 0: overruled
  int maker_row = 0;
  std::string initials;  // of who overruled; empty: nobody
};

}  // namespace backmark::model
