// Which materials go with what was measured, which are ruled out by what, and what to measure
// next.
#pragma once

#include <string>
#include <vector>

#include "assay/bench.h"
#include "base/result.h"

namespace backmark::assay {

struct Candidate {
  std::string material;
  double p = 0;            // among the materials of the table, each as likely to begin with
  std::string borderline;  // a reading that fits only within its error; empty: none
};

struct Excluded {
  std::string material;
  std::string by;  // in words
};

struct NextTest {
  std::string test;      // as the bench names it: "uv_long", "air_g and water_g"
  double gain_bits = 0;  // expected fall of the entropy of the candidates
  int minutes = 0;
  std::string harm;  // what it can do to the thing, and when not to do it
  bool allowed = true;
};

struct Identified {
  std::vector<Candidate> candidates;  // likeliest first
  std::vector<Excluded> excluded;
  std::vector<NextTest> next;      // allowed ones first, by gain
  std::vector<std::string> notes;  // doubts to show beside the answer
};

// Problems: bad_input (a word that is none of its kind), refused (a reading outside what the
// method can give; nothing of the table left, which is said with what to think of).
Result<Identified> identify(const Bench& bench);

// Tests that are never to be made on a piece of a collection.
const std::vector<std::string>& never();

}  // namespace backmark::assay
