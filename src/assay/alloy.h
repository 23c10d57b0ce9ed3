// Mixtures whose volumes add: 1 / rho = sum of (mass share / rho of the part). Measured alloys
// differ from it by a few hundredths of g/cm3, by ordering and pores.
#pragma once

#include <utility>
#include <vector>

#include "base/result.h"

namespace backmark::assay {

// g/cm3; from tables of metal densities (copper at 20 degrees C: from memory).
inline constexpr double silver_density = 10.49;
inline constexpr double copper_density = 8.96;
inline constexpr double gold_density = 19.32;

// (mass share, density) of each part. Problems: refused (shares that are no shares of one).
Result<double> mixed_density(const std::vector<std::pair<double, double>>& parts);

// g/cm3 of silver and copper alone; `permille` of silver, 0 to 1000.
Result<double> silver_alloy_density(double permille);

struct Fineness {
  double permille = 0;
  double u = 0;  // standard uncertainty, from that of the density
};

// The fineness of an alloy of silver and copper alone. Problem: refused outside 8.96 to 10.49
// g/cm3: then it is no such alloy, or it is hollow, set, or not weighed right.
Result<Fineness> silver_fineness(double g_cm3, double u);

// Mass share of the denser of two parts in a whole of density `whole`. Problem: refused when
// the whole does not lie between the two: voids lower it, nothing raises it above the densest
// part.
Result<double> denser_share(double whole, double lighter, double denser);

// The same when the lighter part is only known to lie between two densities: an interval, and
// never a name for the lighter part.
Result<std::pair<double, double>> denser_share_between(double whole,
                                                       std::pair<double, double> lighter,
                                                       double denser);

}  // namespace backmark::assay
