// Rows of any kind of record: the SQL that names their columns, binding, reading, and JSON.
// Include in bodies only.
#pragma once

#include "store/codec.h"
#include "store/fields.h"

namespace backmark::store {

// Stands for a kind of record where a type must travel as a value.
template <class T>
struct Kind {
  using type = T;
};

// Calls visit(Kind<T>{}) for every kind of record, in the order of model::Records.
template <class Visit>
void each_kind(Visit&& visit) {
  std::apply(
      [&](const auto&... rows) {
        (visit(Kind<typename std::decay_t<decltype(rows)>::value_type>{}), ...);
      },
      model::Records{});
}

// The columns of a record, each written as `form` says ("{}" is the quoted name), with commas.
template <class T>
std::string columns(const char* form) {
  std::vector<std::string> list;
  const T row{};
  fields_of(row, [&](std::string_view name, const auto&) {
    list.push_back(replace_all(form, "{}", fmt::format("\"{}\"", name)));
  });
  return join(list, ",");
}

// Reads the columns of a record, the first of them at column `at`; gives the column behind
// them.
template <class T>
int read_row(SQLite::Statement& statement, T& row, int at = 0) {
  fields_of(row, [&](std::string_view, auto& member) {
    read_member(statement.getColumn(at++), member);
  });
  return at;
}

// Binds every member, the first at parameter 1; gives the parameter behind them.
template <class T>
int bind_row(SQLite::Statement& statement, const T& row) {
  int at = 1;
  fields_of(
      row, [&](std::string_view, const auto& member) { bind_member(statement, at++, member); });
  return at;
}

// As the book shows it; text_of(word) gives the text of a word.
template <class T, class TextOf>
Json to_json(const T& row, const TextOf& text_of) {
  Json json = Json::object();
  fields_of(row, [&](std::string_view name, const auto& member) {
    put_member(json, name, member, text_of);
  });
  return json;
}

// A record as the book showed it. word_of(text) gives the word of a text.
template <class T, class WordOf>
T from_json(const Json& json, const WordOf& word_of) {
  T row{};
  fields_of(row, [&](std::string_view name, auto& member) {
    get_member(json, name, member, word_of);
  });
  return row;
}

// The piece that a record is or belongs to; none if it belongs to no single piece.
template <class T>
model::Id<model::Piece> piece_of(const T& row) {
  if constexpr (std::is_same_v<T, model::Piece>) {
    return row.id;
  } else if constexpr (std::is_same_v<T, model::Claim>) {
    return {row.about == model::About::piece ? row.subject : 0};
  } else if constexpr (requires { row.piece; }) {
    return row.piece;
  } else {
    return {};
  }
}

// SQL that picks the rows of a piece (parameter 1), or nothing if the kind belongs to none.
template <class T>
constexpr std::string_view of_piece_sql() {
  if constexpr (std::is_same_v<T, model::Piece>) {
    return "id = ?1";
  } else if constexpr (std::is_same_v<T, model::Claim>) {
    return "subject = ?1 AND about = 0";
  } else if constexpr (requires(T row) { row.piece; }) {
    return "piece = ?1";
  } else {
    return "";
  }
}
static_assert(static_cast<int>(model::About::piece) == 0);

// The column that no two records of this kind may share, if there is one.
template <class T>
constexpr std::string_view unique_column() {
  if constexpr (std::is_same_v<T, model::Piece>) {
    return "number";
  } else if constexpr (requires(T row) { row.key; }) {
    return "key";
  } else {
    return "";
  }
}

template <class T>
std::string unique_text(const T& row) {
  if constexpr (std::is_same_v<T, model::Piece>) {
    return row.number;
  } else if constexpr (requires { row.key; }) {
    return row.key;
  } else {
    return "";
  }
}

// JSON on one line; bytes that are no UTF-8 become U+FFFD.
inline std::string dumped(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace backmark::store
