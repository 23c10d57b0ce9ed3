// What would settle a claim, as JSON, for whoever lists claims or tests one.
#pragma once

#include "base/json_fwd.h"
#include "model/claim_test.h"
#include "model/show.h"

namespace backmark::desk {

// A list of {number, part, character, label, moves, minutes, again, answers: [{value, p,
// p_claim}]}; a piece that was withdrawn since is left out.
Json looks_json(const model::Show& show, const model::ClaimTest& test);

}  // namespace backmark::desk
