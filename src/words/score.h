// Whether the phrases keep their word: scored against what is known.
#pragma once

#include <string>
#include <vector>

#include "base/year.h"
#include "model/show.h"
#include "words/phrase.h"

namespace backmark::words {

// What is known of a piece apart from the reckoning.
struct KnownPiece {
  model::Id<model::Piece> piece;
  Year year;
  model::Id<model::Maker> maker;  // none: an unrecorded hand
};

// How one row of a table did. `low` and `high` bound the true share with 90 % confidence
// (Wilson score interval: E. B. Wilson, Journal of the American Statistical Association 22,
// 1927). Rows with fewer than 10 cases are pooled with the row below; `rows` names all pooled.
struct PhraseScore {
  std::string rows;  // "about 1955" or "1954 + 1954 or 1955"
  int n = 0;
  int hits = 0;
  double floor = 0;  // the mean of the floors of the cases
  double low = 0;
  double high = 1;
  bool kept() const { return high >= floor; }  // the floor is not ruled out
};

struct ScoreCard {
  std::vector<PhraseScore> years;
  std::vector<PhraseScore> makers;
};

// Overruled phrases and rows that claim nothing are left out.
ScoreCard score_phrases(const model::Show& show,
                        const PhraseBook& phrases,
                        const std::vector<KnownPiece>& known);

struct Interval {
  double low = 0;
  double high = 1;
};
// Wilson's interval for `hits` of `n`, with `z` standard deviations either way (1.645: 90 %).
Interval wilson(int hits, int n, double z = 1.6448536269514722);

}  // namespace backmark::words
