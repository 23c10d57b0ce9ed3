// JSON for the whole house; include it in bodies, base/json_fwd.h in headers.
#pragma once

#include <nlohmann/json.hpp>

#include "base/json_fwd.h"
