// The pages that a device sees before it is let in: plain, so that they work before anything of
// the workbench is given away.
#pragma once

#include <optional>
#include <string>

#include "base/result.h"
#include "web/http.h"

namespace backmark::web {

// The form that lets a device in by `code`; above it what was wrong with the last try.
Response pair_form(const std::string& code, const std::optional<Problem>& wrong, int status);

// What a device is told that came without a code, or whose code is no longer any good.
Response pair_refusal(const Problem& problem, int status);

}  // namespace backmark::web
