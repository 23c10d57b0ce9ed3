// Draws of the Polya-Gamma distribution, which makes logistic counts conditionally Gaussian.
//
// If y of n trials succeed with log-odds x, then given omega ~ PG(n, x) the likelihood of x is
// exp((y - n/2) x - omega x^2 / 2). Exact sampler of Polson, Scott and Windle (arXiv
// 1205.0310).
#pragma once

#include "base/random.h"

namespace backmark::evidence {

// PG(trials, tilt), trials >= 0; 0 trials give 0. Mean trials tanh(tilt/2) / (2 tilt), trials/4
// at 0.
double draw_polya_gamma(int trials, double tilt, Random& random);

}  // namespace backmark::evidence
