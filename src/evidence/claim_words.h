// The small grammar of claims that can be asked about.
//
//   [FORM] first made in YEAR [by MAKER]      slide tie first made in 1946 by Oda Vessen
//   [FORM] first made by MAKER in YEAR
//   pieces with VALUE are by MAKER            pieces with motif=tern are by Oda Vessen
//   VALUE was not used before YEAR            push button was not used before 1964
//   design VALUE is MAKER's                   design figure-eight wire is Oda Vessen's
//
// VALUE is a word of one character, or CHARACTER=VALUE where several have it; a maker is named
// by name or key. Case is of no account.
#pragma once

#include <string_view>

#include "base/result.h"
#include "model/claim_test.h"
#include "model/show.h"

namespace backmark::evidence {

// Problems: bad_input, with what can be asked or the nearest name.
Result<model::AskedClaim> read_claim(const model::Show& show, std::string_view text);

}  // namespace backmark::evidence
