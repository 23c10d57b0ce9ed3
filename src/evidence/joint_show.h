// What the joint sampler is given: pieces, their recorded characters, and what bears on their
// years and makers. Years are offsets from the first year of the grid, 0 .. years - 1.
//
// The model (derived in docs/manual/method-joint.md): a piece by maker m of year t shows value
// v of character c with probability (1 - w_c) pi_c(v|t) + w_c theta_mc(v): the fashion of the
// year or the maker's own habit, itself formed on the fashion of the middle of the maker's
// span. Components may be later replacements. Not recorded is not "absent": absence is a value
// of its own.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/year.h"
#include "evidence/spans.h"

namespace backmark::evidence {

struct JointCharacter {
  int values = 2;     // at least 2; order them by expected age where known, else by frequency
  int component = 0;  // index of its component
};

struct JointMaker {
  SpanPrior span;
  std::optional<std::pair<int, int>> known_span;  // first and last offset, not inferred
};

// The ordered variants of one mark.
struct JointLineage {
  int variants = 2;
};

// A variant seen on a piece, from 0, oldest first.
struct JointMark {
  int lineage = 0;
  int variant = 0;
};

// Something that bears on the year if it holds and says something else if it does not (a story
// that may be empty talk; a part that may be later): weight (1 - q) holds(t) + q fails(t), with
// q the share of failures among all doubts of its kind.
struct JointDoubt {
  int kind = 0;
  std::vector<double> holds;  // one a year
  std::vector<double> fails;  // one a year; empty: 1
};

struct JointPiece {
  std::vector<int> values;          // one a character; -1 not recorded
  int maker = -1;                   // -1 unknown, 0 known to be no listed maker's, 1..K known
  bool named = false;               // bears the maker's name: only these enter the signing rate
  std::vector<double> year_weight;  // E(t) of statements and limits, one a year; empty is flat
  std::vector<double> maker_weight;  // 0..K, statements about the maker; empty is flat
  std::vector<JointMark> marks;
  std::vector<JointDoubt> doubts;
  bool teaches = true;  // false: judged by the shared parts without feeding back
};

struct JointShow {
  YearSpan years;
  int components = 1;
  std::vector<JointCharacter> characters;
  std::vector<JointMaker> makers;  // maker m of the pieces is makers[m - 1]
  std::vector<JointLineage> lineages;
  std::vector<std::pair<double, double>> doubts;  // a kind: Beta prior of q
  std::vector<JointPiece> pieces;
};

// Known faults for the tests that must catch them; `none` everywhere else.
enum class SamplerFault { none, length_dropped, stale_tables, own_year_base };

struct JointSettings {
  // Each grid has equal weights; a grid of one value is that value held fixed.
  std::vector<double> fashion_step = {0.02, 0.04, 0.07, 0.10,
                                      0.14, 0.20, 0.28, 0.40};  // per year
  std::vector<double> concentration = {0.5, 1, 2, 4, 8, 16};
  double fashion_first_sd = 1.5;
  std::pair<double, double> habit_share{1, 1};  // Beta prior of w_c
  bool flat_habit_base = false;  // habits around equal shares, not around fashion
  double maker_weight = 1;       // Dirichlet weight of a listed maker
  double unlisted_weight = 0;    // of hands not on the list; 0 is a quarter of the makers
  std::optional<double> unlisted_share;  // the curator's, for pieces that do not teach
  bool signing = true;
  bool equal_makers = false;  // no shares of makers are learned; maker_weight alone tells
  std::vector<std::pair<double, double>> replaced;  // Beta prior a component; empty: never
  int replaced_gap = 10;                            // years
  bool learn_density = true;                        // of unlisted hands' years; else flat
  std::vector<int> mark_overlap = {0, 1, 2,
                                   4, 7, 11};  // half-widths of a change of mark, years
  double mark_stray = 0;  // share of marks out of their sequence, any variant alike
  SamplerFault fault = SamplerFault::none;
};

}  // namespace backmark::evidence
