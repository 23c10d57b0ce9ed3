// What to look at next: the expected information of each look, weighed out or roughly.
//
// A look at character c of a piece brings answer v with chance pi(v) (look_answers.h). Weighed
// out, the piece is judged with each answer: years p_v(t), makers q_v(m), and with P = sum
// pi(v) p_v, Q = sum pi(v) q_v
//     bits_year = H(P) - sum pi(v) H(p_v),      bits_maker the same of q,
// never negative (concavity of entropy). gain_bits is their sum: exact where year and maker are
// independent given the answer, else an upper estimate of what they say together. gain_years is
// the width of the 80 % span now, less its mean after.
//
// A re-check of something seen: seen with certainty k it is wrong with e = max(0.02, 1 - k)
// before the rest of the piece is heard; a wrong reading is any other value alike. Given what
// the rest says of the answers (the piece judged without the character), the chance w that the
// record is wrong follows by Bayes' rule; the record stands with 1 - w, any other answer has w
// times its share.
//
// Cost: a rough figure for every look (linear in the pieces); of these the best, by rough bits
// a minute, are weighed out until `judgements` pieces have been judged.
#pragma once

#include "evidence/reckon.h"
#include "model/look.h"

namespace backmark::evidence {

struct LookSettings {
  std::size_t judgements = 6000;
  double least_bits = 0.02;  // looks below are not listed
  int threads = 0;
};

// Looks and conflicts; no plan. The same on any number of threads.
Result<model::LookList> next_looks(const model::Show& show,
                                   const Reckoning& reckoning,
                                   const LookSettings& settings,
                                   const Watch& watch);

}  // namespace backmark::evidence
