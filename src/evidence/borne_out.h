// How often what a source says of pieces is borne out by everything else that is known of them.
//
// Of each saying j the piece is judged without it, and without what else tellers of the same
// origin say of the piece: P_j, the chance that it is true, against U_j, what it would be for
// any of the pieces looked at. A true saying is so much likelier than empty talk: L_j = P_j /
// U_j. With r the share of true sayings, Beta with the mean of reliability_of and a strength of
// 4,
//     p(r | sayings) ~ p(r) prod over lots (r L + 1 - r),
// where the sayings about one lot count once, with the mean of their ln L.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "evidence/reckon.h"
#include "model/show.h"

namespace backmark::evidence {

struct SayingChecked {
  std::int32_t record = 0;  // id of the claim
  double p = 0;             // that it is true, by everything else
};

struct SourceChecked {
  model::Id<model::Source> source;
  double share = 0;      // mean of r
  std::size_t told = 0;  // lots in which truth and empty talk would be told apart
};

struct BorneOut {
  std::vector<SayingChecked> sayings;  // by record
  std::vector<SourceChecked> sources;  // with at least one such lot, in the order of the show
};

// Of claims on pieces that say a year or a maker: at most 40 a source, spread evenly over them.
// Problem: refused (stopped).
Result<BorneOut> borne_out(const model::Show& show,
                           const Reckoning& reckoning,
                           const Watch& watch);

// The mean of r, from one ln L a lot.
double share_true(double reliability, const std::vector<double>& log_ratios);

}  // namespace backmark::evidence
