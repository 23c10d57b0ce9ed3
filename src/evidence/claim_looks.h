// What to look at so that a claim is settled: which look at a piece that carries it should move
// the chance of the claim most for its minutes.
//
// A look brings answer v with chance pi(v); with it the claim would stand at p_v. It moves the
// claim by sum pi(v) |p_v - P| on average, P = sum pi(v) p_v: 0 if no answer tells, at most
// 2 P (1 - P). The piece
// is judged without the character that the claim is about, as the claim itself is.
//
// Of each carrier the six looks with most rough bits a minute are weighed out.
#pragma once

#include "evidence/claim_on_table.h"

namespace backmark::evidence {

// `carriers`: rows of the table. Most a minute first; those that move it by less than one
// chance in two hundred are left out. The same on any number of threads.
std::vector<model::ClaimLook> claim_looks(const model::Show& show,
                                          const Reckoning& reckoning,
                                          const ClaimOnTable& table,
                                          const model::AskedClaim& claim,
                                          const std::vector<std::size_t>& carriers);

}  // namespace backmark::evidence
