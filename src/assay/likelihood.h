// How well one material of the table goes with each thing that was measured.
#pragma once

#include <string>
#include <vector>

#include "assay/bench.h"
#include "reference/material.h"

namespace backmark::assay {

// One test on one material. Likelihoods are compared among materials; no test counts for more
// than `cap` (below), so that one slip of hand or table cannot decide.
struct Fit {
  double likelihood = 1;
  std::string excluded;  // what rules it out, in words; empty: nothing does
};

enum class Test { density, index, blink, uv_long, uv_short, magnet, seen, angle, fineness };

// At most so much likelier may one test make a material than another.
double cap(Test test);
// Those that were made.
std::vector<Test> tests_of(const Bench& bench);
Fit fit(const reference::Material& material, const Bench& bench, Test test);

// Density as the table has it: a normal curve on each side of the usual value, of which the
// published ends are two standard deviations.
double density_likelihood(const reference::Material& material, const Density& density);

}  // namespace backmark::assay
