// Married pieces: which part does not belong, and how the others date the piece meanwhile.
//
// A piece has components (front, fitting, cord, tips, rest). Each says L_g(t) about the year if
// it is original. If it was replaced, it was made `gap` years after the piece or later, any
// year alike:
//     R_g(t) = mean of L_g(t') over t' >= t + gap.
// Its factor on the piece's year is (1 - rho_g) L_g(t) + rho_g R_g(t). Within the last `gap`
// years of the grid no replacement can be told, and the factor is L_g(t).
//
// Conflict: F_g = sum p_without_g(t) R_g(t) / sum p_without_g(t) L_g(t), p_without_g being the
// year from all but component g, and
//     logit P(replaced) = logit(rho_g) + slope ln F_g.
// Slope 1 is Bayes' rule; 2 was measured to be calibrated where L_g comes from smoothed curves,
// whose contrasts are too weak.
#pragma once

#include <vector>

namespace backmark::evidence {

// Assumed shares of replaced parts (a Beta(1,39), (1,19), (2,13) mean each); set by the
// curator. Common practice, no source.
namespace usual_replaced {
inline constexpr double front = 0.025;
inline constexpr double fitting = 0.05;
inline constexpr double cord = 0.13;
inline constexpr double tips = 0.13;
inline constexpr double rest = 0.025;
}  // namespace usual_replaced

struct ComponentEvidence {
  std::vector<double> weight_log;  // ln L_g(t) up to a constant, one a year
  double replaced_share = 0.05;    // rho_g, 0 to below 1
};

struct ComponentRule {
  int gap = 10;      // years
  double slope = 2;  // on ln F_g
};

struct WeighedComponents {
  std::vector<double> p;           // the piece's year, sums to 1
  std::vector<double> replaced_p;  // one a component
  // At most one part is odd: [0] none, [1 + g] component g; sums to 1. Odds are ratios of
  // these.
  std::vector<double> odd_p;
  // 1 - prod (1 - replaced_p): something on this piece is later.
  double any_replaced_p = 0;
};

// ln R_g(t); where t + gap lies past the grid, ln L_g(t).
std::vector<double> later_log(const std::vector<double>& weight_log, int gap);

// `base_p`: the year from everything that is no component (sums to 1, one a year). All curves
// share its grid. No component: base_p comes back.
WeighedComponents weigh_components(const std::vector<double>& base_p,
                                   const std::vector<ComponentEvidence>& components,
                                   ComponentRule rule);

}  // namespace backmark::evidence
