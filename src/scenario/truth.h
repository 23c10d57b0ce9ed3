// What really happened on the invented coast: known to the generator, kept out of the show, and
// used to score every claim of accuracy.
#pragma once

#include <string>
#include <vector>

#include "base/year.h"

namespace backmark::scenario {

// A part that was put on later than the ornament was made.
struct ReplacedPart {
  std::string kind;  // "fitting", "cord", "tip" (as model::Part)
  Year year;
};

struct PieceTruth {
  std::string number;        // "ES 118"
  Year year;                 // the ornament was made
  std::string maker;         // key of model::Maker; empty: an unrecorded hand
  bool names_maker = false;  // its mark is the maker's own
  std::vector<ReplacedPart> replaced;
};

// A story that a source tells of a piece and that is wrong.
struct WrongStory {
  std::string number;
  std::string source;  // key of model::Source
  std::string text;    // as the claim has it
};

struct LineageTruth {
  std::string character;
  std::string maker;  // key; empty: everybody's
  std::vector<std::string> variants;
  std::vector<Year> changed;  // changed[i]: the first year of variants[i + 1]
};

struct Truth {
  std::vector<PieceTruth> pieces;  // in the order of their numbers
  std::vector<WrongStory> stories;
  std::vector<LineageTruth> lineages;
  std::string first_maker;  // who made the first slide tie
  Year first_year;
};

// One row a piece: number,year,maker,names_maker,replaced,story. `replaced` is
// "cord:1968;tip:1970", `story` the key of a source that tells a wrong story. The maker is
// empty for an unrecorded hand.
std::string pieces_csv(const Truth& truth);

// Everything, as JSON text: seed-independent keys pieces, stories, lineages, first.
std::string to_json(const Truth& truth);

}  // namespace backmark::scenario
