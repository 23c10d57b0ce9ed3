// Members of records to and from SQL values and JSON. Include in bodies only.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "base/json.h"
#include "base/text.h"
#include "base/year.h"
#include "model/id.h"

namespace backmark::store {

template <class M>
inline constexpr bool is_optional = false;
template <class M>
inline constexpr bool is_optional<std::optional<M>> = true;

// Lists of words or ids are kept as their numbers, joined by commas.
template <class Item>
std::string list_text(const std::vector<Item>& items) {
  std::vector<std::string> numbers;
  for (const Item& item : items) {
    numbers.push_back(std::to_string(item.value));
  }
  return join(numbers, ",");
}

template <class Item>
void read_list(std::string_view text, std::vector<Item>& items) {
  if (text.empty()) {
    return;
  }
  for (const auto part : split(text, ",")) {
    items.push_back(Item{static_cast<decltype(Item{}.value)>(to_whole(part).value_or(0))});
  }
}

template <class M>
void bind_member(SQLite::Statement& statement, int at, const M& member) {
  if constexpr (is_optional<M>) {
    member ? bind_member(statement, at, *member) : statement.bind(at);
  } else if constexpr (std::is_same_v<M, std::string>) {
    statement.bindNoCopy(at, member);
  } else if constexpr (std::is_floating_point_v<M>) {
    statement.bind(at, static_cast<double>(member));
  } else if constexpr (std::is_enum_v<M> || std::is_integral_v<M>) {
    statement.bind(at, static_cast<std::int64_t>(member));
  } else if constexpr (requires { member.value; }) {
    statement.bind(at, static_cast<std::int64_t>(member.value));
  } else {
    statement.bind(at, list_text(member));
  }
}

template <class M>
void read_member(const SQLite::Column& column, M& member) {
  if constexpr (is_optional<M>) {
    if (!column.isNull()) {
      read_member(column, member.emplace());
    }
  } else if constexpr (std::is_same_v<M, std::string>) {
    member.assign(column.getText(""), static_cast<std::size_t>(column.getBytes()));
  } else if constexpr (std::is_floating_point_v<M>) {
    member = static_cast<M>(column.getDouble());
  } else if constexpr (std::is_enum_v<M> || std::is_integral_v<M>) {
    member = static_cast<M>(column.getInt64());
  } else if constexpr (requires { member.value; }) {
    member.value = static_cast<decltype(member.value)>(column.getInt64());
  } else {
    read_list(column.getText(""), member);
  }
}

// As the book shows it: words as their texts, `none` members left out.
template <class M, class TextOf>
void put_member(Json& json, std::string_view name, const M& member, const TextOf& text_of) {
  const std::string key(name);
  if constexpr (is_optional<M>) {
    if (member) {
      put_member(json, name, *member, text_of);
    }
  } else if constexpr (std::is_same_v<M, model::Word>) {
    if (member) {
      json[key] = std::string(text_of(member));
    }
  } else if constexpr (std::is_same_v<M, std::string> || std::is_floating_point_v<M> ||
                       std::is_same_v<M, bool>) {
    json[key] = member;
  } else if constexpr (std::is_enum_v<M> || std::is_integral_v<M>) {
    json[key] = static_cast<std::int64_t>(member);
  } else if constexpr (requires { member.value; }) {
    json[key] = member.value;
  } else {
    json[key] = list_text(member);
  }
}

// The way back: a member that was left out stays as it is. word_of(text) gives the word of a
// text.
template <class M, class WordOf>
void get_member(const Json& json, std::string_view name, M& member, const WordOf& word_of) {
  const auto at = json.find(std::string(name));
  if (at == json.end()) {
    return;
  }
  if constexpr (is_optional<M>) {
    get_member(json, name, member.emplace(), word_of);
  } else if constexpr (std::is_same_v<M, model::Word>) {
    member = word_of(at->template get<std::string>());
  } else if constexpr (std::is_same_v<M, std::string> || std::is_floating_point_v<M> ||
                       std::is_same_v<M, bool>) {
    at->get_to(member);
  } else if constexpr (std::is_enum_v<M> || std::is_integral_v<M>) {
    member = static_cast<M>(at->template get<std::int64_t>());
  } else if constexpr (requires { member.value; }) {
    at->get_to(member.value);
  } else {
    read_list(at->template get<std::string>(), member);
  }
}

}  // namespace backmark::store
