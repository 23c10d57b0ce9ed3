// The joint sampler as a whole run: chains side by side, judged, averaged over.
//
// Same show, settings and seed give the same answer on any number of threads: each chain has
// its own stream of chance, and chains are put together in their order.
#pragma once

#include <cstdint>
#include <vector>

#include "base/result.h"
#include "evidence/convergence.h"
#include "evidence/joint_show.h"
#include "evidence/joint_state.h"
#include "evidence/watch.h"

namespace backmark::evidence {

struct JointRun {
  int chains = 4;
  int warm_up = 150;   // rounds
  int keep = 400;      // rounds after that
  int judge_each = 2;  // pieces that do not teach are judged every so many kept rounds
  std::uint64_t seed = 1;
  // Last states of a former run, one a chain: the show may since have gained pieces at its end
  // and changed evidence, not characters, makers or years. A fifth of the warm-up then does.
  // May be empty.
  std::vector<JointState> warm_start;
};

struct JointPieceBelief {
  std::vector<double> year;        // p, one a year of the grid
  std::vector<double> maker;       // p, 0..K; 0 is a hand not on the list
  std::vector<double> replaced_p;  // one a component
};

struct JointFit {
  std::vector<JointPieceBelief> pieces;
  Convergence years;                   // of the pieces whose year is not known
  Convergence habit_shares;            // w_c: a nuisance, slow, judged apart
  Convergence shared;                  // ends of spans, changes of marks, shares of doubts
  std::vector<double> habit_share;     // means of w_c
  std::vector<double> doubt_share;     // means of q, one a kind
  std::vector<double> replaced_share;  // means of rho
  double unlisted_share = 0;      // mean share of hands not on the list among pieces judged
  std::vector<SpanBelief> spans;  // by maker - 1, means over draws
  std::vector<std::vector<std::vector<double>>>
      variants;                  // lineage, variant, year: p(variant | t)
  std::vector<JointState> last;  // for a warm start
  bool converged = false;        // 99 % of years below 1.01 with 400 draws, none above 1.05
};

// bad_input: a piece whose values, maker or variant do not exist, weights of the wrong length
// or all 0; a maker whose pieces lie further apart than a working life. refused: stopped.
Result<JointFit> fit_joint(const JointShow& show,
                           const JointSettings& settings,
                           const JointRun& run,
                           const Watch& watch);

}  // namespace backmark::evidence
