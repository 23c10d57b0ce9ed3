// What to measure next: by what it is expected to settle, and by what it may do to the thing.
#pragma once

#include <string>
#include <vector>

#include "assay/identify.h"
#include "reference/material.h"

namespace backmark::assay {

struct Weighed {
  const reference::Material* material = nullptr;
  double weight = 0;     // in proportion to the chance
  std::string excluded;  // by what; empty: it is not
};

// Every material of the group, weighed by the tests that were made.
std::vector<Weighed> weigh(const Bench& bench);

// `left`: those not excluded, their weights with sum 1. The expected fall of entropy, outcomes
// drawn from the candidates themselves.
std::vector<NextTest> next_tests(const Bench& bench, const std::vector<Weighed>& left);

}  // namespace backmark::assay
