// Who may do what: look, record at the table, or curate.
#pragma once

#include <optional>
#include <string_view>

#include "desk/operation.h"

namespace backmark::web {

enum class Role { look, record, curate };  // each may do what those before it may

std::string_view name_of(Role role);
std::optional<Role> role_named(std::string_view name);

// The least role that may call an operation over HTTP; none: it is not offered there (it makes
// another show).
std::optional<Role> needed_for(const desk::Operation& operation);

}  // namespace backmark::web
