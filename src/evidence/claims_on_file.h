// The claims on file that can be asked about (claim_words.h), each once however many voices say
// it.
#pragma once

#include <string>
#include <vector>

#include "evidence/claim_voices.h"
#include "model/claim_test.h"
#include "model/show.h"

namespace backmark::evidence {

// A claim in the grammar of read_claim, or empty: it says no year or maker, or is of a kind
// that cannot be asked.
std::string asked_as(const model::Show& show, const model::Claim& claim);

struct ClaimOnFile {
  std::string ask;
  model::AskedClaim claim;
  std::vector<Voice> voices;
  std::vector<std::size_t> counted;  // places in `voices` (claim_voices.h)
};

// In the order in which they were first said.
std::vector<ClaimOnFile> claims_on_file(const model::Show& show);

}  // namespace backmark::evidence
