// Chances over several pieces at once.
//
// Curves are judged one piece at a time. Given the shared parts (fashions, spans, lags) pieces
// are independent; but the shared parts are not known, and if they are off, all pieces are off
// together. So every number comes by two routes: `leaning` 0 (independent), and `leaning` r, a
// common normal factor behind the ranks of all pieces (one-factor Gaussian copula):
//     piece i happens  when  sqrt(r) z + sqrt(1 - r) e_i < Phi^-1(p_i).
// Each piece keeps its own chance whatever r is.
#pragma once

#include <cstdint>
#include <vector>

#include "base/year.h"

namespace backmark::evidence {

inline constexpr double usual_leaning = 0.2;  // assumed; common practice, no source

// The chance that at least one of these happens. leaning 0: 1 - prod (1 - p). 0 <= leaning < 1.
double any_of(const std::vector<double>& p, double leaning);

// A piece as it enters a race for the oldest: its years (one axis for all) and the chance that
// it is by the hand asked about.
struct Racer {
  const std::vector<double>* year_p = nullptr;
  double by = 0;
};

// The chance that the oldest of these pieces is by the hand; equal years share alike. Exact for
// independent pieces.
double oldest_is_by(const std::vector<Racer>& racers);
// One a racer: the chance that it is the oldest. Sums to 1.
std::vector<double> chance_oldest(const std::vector<Racer>& racers);
// The same as oldest_is_by, by drawing, with leaning.
double oldest_is_by(const std::vector<Racer>& racers,
                    double leaning,
                    int draws,
                    std::uint64_t seed);

// Phi and its inverse (Acklam's rational approximation, relative error below 1.2e-9).
double normal_below(double z);
double normal_quantile(double p);

}  // namespace backmark::evidence
