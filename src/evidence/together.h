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

// The same for many questions "and if piece i had another chance": each costs no more than one
// piece does, however many there are. 0 < leaning < 1.
class AnyOf {
 public:
  AnyOf(std::vector<double> p, double leaning);
  double chance() const;
  // The chance, were that of piece i `p`. i < the number of pieces.
  double with(std::size_t i, double p) const;

 private:
  double chance_of(std::size_t certain, const std::vector<double>& none_log) const;
  std::vector<double> none_log_of(double p) const;

  std::vector<double> p_;
  double leaning_;
  std::size_t certain_ = 0;       // how many have the chance 1
  std::vector<double> none_log_;  // none of the others happens, by value of the common factor
};

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
