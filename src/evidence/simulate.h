// Made-up shows drawn from the joint model itself, with what is hidden in them: for checks of
// the sampler (rank tests) and of its honesty (cover, odds).
#pragma once

#include "base/random.h"
#include "evidence/joint_show.h"
#include "evidence/joint_state.h"

namespace backmark::evidence {

struct SimulationPlan {
  YearSpan years{{1850}, {1999}};
  int pieces = 300;
  std::vector<JointCharacter> characters;
  int components = 1;
  int makers = 4;
  double missing = 0.35;       // share of characters not recorded
  double dated = 0.20;         // share of pieces with a sure year
  double stated = 0.35;        // share of the others with a vague statement
  double stated_wrong = 0.15;  // of those, plain empty talk
  double stated_sd = 8;        // years
  // Beta prior of the share of empty talk, if it is to be inferred; then `stated_wrong` is not
  // used.
  std::optional<std::pair<double, double>> stated_doubt;
  double known_maker = 0;     // share of unnamed pieces whose maker is told all the same
  std::vector<int> lineages;  // variants of each mark in order
  double marked = 0;          // share of pieces with a mark of some lineage
};

struct Simulated {
  JointShow show;
  JointState truth;
  std::vector<int> stated_year;  // offset told for a piece, -1 none
  std::vector<char> stated_right;
};

// Everything, shared parts included, from the prior of `settings` as JointChain has it. A named
// piece has its maker told; the statement's weight on the piece is its exact likelihood.
Simulated simulate_show(const SimulationPlan& plan,
                        const JointSettings& settings,
                        Random& random);

// The pieces (and their lineage, statements) of `state`'s shared parts, redrawn: shared parts
// are kept.
void simulate_pieces(const SimulationPlan& plan,
                     const JointSettings& settings,
                     Simulated& simulated,
                     Random& random);

}  // namespace backmark::evidence
