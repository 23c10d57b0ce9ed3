// What to look at next, as rooms hand it to each other.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "model/belief.h"
#include "model/exhibit.h"

namespace backmark::model {

// An answer that a look may bring, and what it would leave of the piece's years.
struct LookAnswer {
  std::string value;  // "wire", "looked for, none", "22 to 25 mm"
  double p = 0;       // chance of this answer
  Year p10, p50, p90;
};

// A look that is worth taking.
struct Look {
  Id<Piece> piece;
  Word part;  // kind of part; none: the piece as a whole
  Id<Character> character;
  double gain_bits = 0;  // expected: bits_year + bits_maker
  double bits_year = 0;
  double bits_maker = 0;
  double gain_years = 0;            // expected narrowing of the 80 % span, in years
  double minutes = 0;               // at the table, without fetching
  bool again = false;               // re-check of something recorded
  Year p10, p50, p90;               // the piece's years before the look
  std::vector<LookAnswer> answers;  // likeliest first, some of them; may be empty
};

// One visit of a day's plan: a tray or a lender, and what to look at there.
struct LookStop {
  Word tray;          // none: not by tray, or the pieces lie in none
  Id<Lender> lender;  // none: not by lender, or nobody's
  double fetch_minutes = 0;
  double minutes = 0;  // with fetching and handling
  double gain_bits = 0;
  std::vector<std::size_t> looks;  // places in LookList::looks, piece by piece
};

// A look that the day is too short for.
struct LookMissed {
  std::size_t look = 0;  // place in LookList::looks
  double minutes = 0;    // with fetching and handling, where the plan has not done them
  double over = 0;       // minutes that the day would run over
};

struct LookList {
  std::vector<Look> looks;         // most bits a minute first
  std::vector<Misfit> conflicts;   // most doubtful first
  double hours = 0;                // that the plan is for; 0: no plan was asked for
  std::vector<LookStop> plan;      // in the order of the day
  std::vector<LookMissed> missed;  // best first, one a stop, three at most
  double planned_minutes = 0;
  double planned_bits = 0;
  std::vector<std::string> notes;  // doubts, and what was assumed
};

}  // namespace backmark::model
