// A claim held against the pieces and the sources.
//
// Pieces. Every piece in play gets a chance p_i of speaking against the claim, judged *without*
// the character the claim is about, so that a curve is not its own witness:
//   first       P(made before the year); where no firm date stands, through the map that the
//   style
//               engine learned for "made before" (OddsMap)
//   all_by      P(not by the maker)
//   not_before  P(made before the year) times P(the part is original): as recorded (0.99,
//   0.02),
//               else one less the usual share of replaced parts
//   design      the race for the oldest piece with the value (together.h)
// The claim stands with P(no piece speaks against it), by two routes: each piece by itself, and
// leaning together.
//
// Sources. Tellings of one origin are one voice, with the largest reliability among them.
// "First by maker": one hypothesis a named maker and one for somebody else, before evidence 1 /
// (makers + 1) each and the rest; a voice of reliability r gives r to what it says and (1 - r)
// / makers to each other; each hypothesis is weighed by P(no piece by another hand is older
// than the year it is said of). Other claims: odds times r / (1 - r), or its inverse, a voice.
#pragma once

#include <cstdint>

#include "evidence/reckon.h"
#include "model/claim_test.h"

namespace backmark::evidence {

model::ClaimTest test_claim(const model::Show& show,
                            const Reckoning& reckoning,
                            const model::AskedClaim& claim,
                            std::uint64_t seed);

}  // namespace backmark::evidence
