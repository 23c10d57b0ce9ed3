// Steps of the chain for what may not hold: stories that may be empty, parts that may be later.
#include <algorithm>

#include "evidence/joint_chain.h"

namespace backmark::evidence {

// The piece's weights by year with every doubt summed out under the shares of now.
void JointChain::sum_out_doubts(Index piece) {
  PieceFrame& frame = frames_[piece];
  if (frame.sure_weight.empty()) {
    return;
  }
  frame.year_weight = frame.sure_weight;
  const auto first = static_cast<Index>(frame.first);
  for (const JointDoubt& doubt : show_.pieces[piece].doubts) {
    const double q = state_.doubt_share[static_cast<Index>(doubt.kind)];
    for (Index t = 0; t < frame.year_weight.size(); ++t) {
      const double fails = doubt.fails.empty() ? 1 : doubt.fails[first + t];
      frame.year_weight[t] *= static_cast<float>((1 - q) * doubt.holds[first + t] + q * fails);
    }
  }
}

// Which doubts hold, given the years, and from these the share of each kind that does not.
void JointChain::redraw_doubts() {
  if (show_.doubts.empty()) {
    return;
  }
  std::vector<std::pair<double, double>> seen = show_.doubts;
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    if (!show_.pieces[i].teaches) {
      continue;
    }
    const auto year = static_cast<Index>(state_.piece[i].year);
    for (const JointDoubt& doubt : show_.pieces[i].doubts) {
      const auto kind = static_cast<Index>(doubt.kind);
      const double q = state_.doubt_share[kind];
      const double fails = q * (doubt.fails.empty() ? 1 : doubt.fails[year]);
      const double holds = (1 - q) * doubt.holds[year];
      const bool failed = fails + holds > 0 && random_.chance(fails / (fails + holds));
      (failed ? seen[kind].first : seen[kind].second) += 1;
    }
  }
  for (Index kind = 0; kind < seen.size(); ++kind) {
    state_.doubt_share[kind] = draw_beta(seen[kind].first, seen[kind].second, random_);
  }
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    sum_out_doubts(i);
  }
}

}  // namespace backmark::evidence
