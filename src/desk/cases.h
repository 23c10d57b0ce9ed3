// What the operations on display cases share.
#pragma once

#include "base/json.h"
#include "desk/open.h"

namespace backmark::desk {

// The case of that key. Problem: not_found, with the keys there are.
Result<const model::Case*> find_case(const model::Show& show, const std::string& key);

// What a case is, as it stands in answers; what nobody measured is null.
Json to_json(const model::Case& one);

// Days of the run: --days, or from opening to the last day, both counted. Problems: bad_input,
// not_found (neither is said).
Result<double> days_of_run(const Call& call, const model::Show& show);

}  // namespace backmark::desk
