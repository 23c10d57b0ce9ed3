// A JSON body to the call of an operation. Every field must be one that the operation takes.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "desk/operation.h"

namespace backmark::web {

// What a body asks for: the call without its show, and what writers may say besides.
struct Ask {
  desk::Call call;
  std::optional<std::int64_t> seen;
  std::string once;
  std::string text;  // the body, for telling both sides of a conflict
};

// The operation of that name. Problem: not_found, with the nearest name.
Result<const desk::Operation*> operation_named(std::string_view name);

// Problems: bad_input (no JSON object, a field the operation does not take, a value of the
// wrong kind, a field missing), refused (a file or folder of the machine that serves).
Result<Ask> read_ask(const desk::Operation& operation, const std::string& body);

}  // namespace backmark::web
