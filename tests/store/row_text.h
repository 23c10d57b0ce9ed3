// Every member of a record as text, for comparing records in tests.
#pragma once

#include <string>

#include "base/text.h"
#include "store/fields.h"

namespace backmark {

template <class T>
inline std::string to_text(const T& row) {
  std::string text;
  store::fields_of(row, [&](std::string_view name, const auto& member) {
    using M = std::decay_t<decltype(member)>;
    text += fmt::format("{}=", name);
    if constexpr (std::is_same_v<M, std::string>) {
      text += member;
    } else if constexpr (std::is_enum_v<M>) {
      text += std::to_string(static_cast<int>(member));
    } else if constexpr (std::is_arithmetic_v<M>) {
      text += fmt::format("{}", member);
    } else if constexpr (requires { member.has_value(); }) {
      if (!member) {
        text += "none";
      } else if constexpr (requires { member->value; }) {
        text += std::to_string(member->value);
      } else {
        text += fmt::format("{}", *member);
      }
    } else if constexpr (requires { member.value; }) {
      text += std::to_string(member.value);
    } else {
      for (const auto& item : member) {
        text += fmt::format("{},", item.value);
      }
    }
    text += ";";
  });
  return text;
}

}  // namespace backmark
