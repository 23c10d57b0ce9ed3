// What nobody measured or said is null in answers.
#pragma once

#include <optional>

#include "base/json.h"

namespace backmark::desk {

template <class T>
Json or_null(const std::optional<T>& value) {
  if constexpr (requires { value->value; }) {
    return value ? Json(value->value) : Json(nullptr);  // a year, lux ...
  } else {
    return value ? Json(*value) : Json(nullptr);
  }
}

}  // namespace backmark::desk
