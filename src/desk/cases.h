// What the operations on display cases share.
#pragma once

#include "base/json.h"
#include "desk/open.h"

namespace backmark::desk {

// The case of that key. Problem: not_found, with the keys there are.
Result<const model::Case*> find_case(const model::Show& show, const std::string& key);

// What a case is, as it stands in answers; what nobody measured is null.
Json to_json(const model::Case& one);

// Applies the change; then gives the answer.
Result<Answer> after_change(OpenShow& open,
                            const model::Change& change,
                            const Surroundings& around,
                            Answer answer);

}  // namespace backmark::desk
