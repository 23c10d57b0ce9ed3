// A walk over everything that records name, to find what is not there. Include in bodies only.
#pragma once

#include <optional>

#include "base/text.h"
#include "store/rows.h"

namespace backmark::store {

inline constexpr std::size_t kind_count =
    model::count_of(static_cast<const model::Records*>(nullptr));

// Kinds of record, a bit each in the order of Records.
using Kinds = std::uint64_t;
static_assert(kind_count < 64);
inline constexpr Kinds any_kind = (Kinds{1} << kind_count) - 1;

template <class T>
constexpr Kinds bit() {
  return Kinds{1} << model::place_of<T>(static_cast<const model::Records*>(nullptr));
}

template <class>
inline constexpr Kinds target_of = 0;
template <class T>
inline constexpr Kinds target_of<model::Id<T>> = bit<T>();
template <class T>
inline constexpr Kinds target_of<std::vector<model::Id<T>>> = bit<T>();

// What `subject` may be the id of; none: it is no id.
inline Kinds subjects_of(const model::Claim& claim) {
  switch (claim.about) {
    case model::About::piece:
      return bit<model::Piece>();
    case model::About::maker:
      return bit<model::Maker>();
    case model::About::character:
      return bit<model::Character>();
    case model::About::form:
      break;
  }
  return 0;
}
inline Kinds subjects_of(const model::Row&) {
  return bit<model::Piece>() | bit<model::Maker>() | bit<model::Source>() |
         bit<model::Window>();
}
inline Kinds subjects_of(const model::Permission&) {
  return bit<model::Piece>() | bit<model::Photograph>() | bit<model::Maker>() |
         bit<model::Source>();
}

// An event may belong to the form and no piece, a reading to a whole case, a requirement to a
// lender; whatever else has a piece needs it.
template <class T>
inline constexpr bool may_be_pieceless =
    std::is_same_v<T, model::Event> || std::is_same_v<T, model::LightReading> ||
    std::is_same_v<T, model::Requirement>;

template <class T>
constexpr bool is_needed(std::string_view column) {
  return (column == "piece" && !may_be_pieceless<T>) || column == "in_case" ||
         (column == "character" && std::is_same_v<T, model::Observation>);
}

// Calls visit(column, id, kinds it may be of) for every record that a row names. What it
// supersedes has ended and is no such record.
template <class T, class Visit>
void each_reference(const T& row, const Visit& visit) {
  fields_of(row, [&](std::string_view column, const auto& member) {
    using M = std::decay_t<decltype(member)>;
    if constexpr (std::is_same_v<M, model::Id<T>>) {
      return;
    } else if constexpr (target_of<M> != 0 && requires { member.value; }) {
      if (member || is_needed<T>(column)) {
        visit(column, member.value, target_of<M>);
      }
    }
  });
  if constexpr (std::is_same_v<T, model::Source>) {
    for (const model::Id<model::Source> from : row.derives_from) {
      visit("derives_from", from.value, bit<model::Source>());
    }
  }
  if constexpr (requires { subjects_of(row); }) {
    if (const Kinds kinds = subjects_of(row); kinds != 0) {
      visit("subject", row.subject, kinds);
    }
  }
}

template <class T>
std::optional<std::string_view> column_without_word(const T& row, std::size_t words) {
  std::optional<std::string_view> found;
  fields_of(row, [&](std::string_view column, const auto& member) {
    using M = std::decay_t<decltype(member)>;
    if constexpr (std::is_same_v<M, model::Word>) {
      found = member.value < words ? found : column;
    } else if constexpr (std::is_same_v<M, std::vector<model::Word>>) {
      for (const model::Word word : member) {
        found = word.value < words ? found : column;
      }
    }
  });
  return found;
}

// "display case" for display_case; columns are written in the same way.
inline std::string kind_name(std::string_view table_or_column) {
  return replace_all(std::string(table_or_column), "_", " ");
}

inline std::string names_of(Kinds kinds) {
  std::vector<std::string> names;
  Kinds at = 1;
  each_kind([&](auto kind) {
    if ((kinds & at) != 0) {
      names.push_back(kind_name(table<typename decltype(kind)::type>));
    }
    at <<= 1;
  });
  return join(names, " or ");
}

// The first bad reference of a walk over records. `Book` answers kinds_of(id, wanted): those
// of the wanted kinds, and with any_kind wanted whatever kind it is; 0 if it is not there.
template <class Book>
class Walk {
 public:
  Walk(Book& book, std::size_t words) : book_(book), words_(words) {}

  void over(const model::Records& records) {
    std::apply([&](const auto&... rows) { (over_rows(rows), ...); }, records);
  }
  struct Found {
    std::string what;  // "observation 7 names part 99 as its part, which is not in the show"
    model::Id<model::Piece> piece;
  };
  const std::optional<Found>& found() const { return found_; }

 private:
  template <class T>
  void over_rows(const std::vector<T>& rows) {
    for (const T& row : rows) {
      if (found_) {
        return;
      }
      each_reference(row, [&](std::string_view column, std::int32_t id, Kinds kinds) {
        if (!found_ && book_.kinds_of(id, kinds) == 0) {
          found_ = Found{missing(row, column, id, kinds), piece_of(row)};
        }
      });
      if (const auto column = column_without_word(row, words_); column && !found_) {
        found_ = Found{fmt::format("{} {} has a word in its column \"{}\" that is not in the "
                                   "show",
                                   kind_name(table<T>), row.id.value, *column),
                       piece_of(row)};
      }
    }
  }

  template <class T>
  std::string missing(const T& row, std::string_view column, std::int32_t id, Kinds kinds) {
    const std::string who = fmt::format("{} {}", kind_name(table<T>), row.id.value);
    if (id == 0) {
      return fmt::format("{} names no {}", who, names_of(kinds));
    }
    const Kinds other = book_.kinds_of(id, any_kind);
    return other == 0
               ? fmt::format("{} names {} {} as its {}, which is not in the show", who,
                             names_of(kinds), id, kind_name(column))
               : fmt::format("{} names record {} as its {}, which is a {} and no {}", who, id,
                             kind_name(column), names_of(other), names_of(kinds));
  }

  Book& book_;
  std::size_t words_;
  std::optional<Found> found_;
};

}  // namespace backmark::store
