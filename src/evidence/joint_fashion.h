// Fashion: how common each value of a character is in each year.
//
// Values in order, split off one by one (sticks): value k is taken with log-odds x_k(t) among
// those that are left. Each x_k is a random walk over years,
//     x_k(0) ~ N(-ln(V-1-k), first_sd^2),   x_k(t) = x_k(t-1) + N(0, step^2),
// whose mean makes all values alike at first. Sticks: Linderman, Johnson and Adams (arXiv
// 1506.05843).
#pragma once

#include <vector>

#include "base/random.h"
#include "evidence/joint_show.h"

namespace backmark::evidence {

// The sticks of one character, (values - 1) x years.
struct Sticks {
  int values = 2;
  int years = 1;
  std::vector<double> log_odds;
};

// Probabilities, values x years; each year sums to 1.
std::vector<double> fashion_of(const Sticks& sticks);

// A draw from the prior.
Sticks draw_sticks_prior(int values, int years, double step, double first_sd, Random& random);

// One exact conditional draw given how often each value was taken in each year (values x
// years), by way of Polya-Gamma variables at the present sticks. The step is drawn from its
// grid with the curves summed out; returns its index. Cost: years x sticks x grid.
std::size_t redraw_sticks(Sticks& sticks,
                          const std::vector<int>& counts,
                          const std::vector<double>& steps,
                          double first_sd,
                          Random& random);

}  // namespace backmark::evidence
