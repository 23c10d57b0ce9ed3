// Names for the records of a show: small numbers that never change and are never used again.
#pragma once

#include <compare>
#include <cstdint>

namespace backmark::model {

// The number of a record of kind T. All kinds draw from one row of numbers, so an id names one
// record in the whole show. 0 is "none".
template <class T>
struct Id {
  std::int32_t value = 0;

  friend auto operator<=>(Id, Id) = default;
  explicit operator bool() const { return value != 0; }
};

// A text kept once in the show's pool; 0 is the empty text. Compare words, not texts.
struct Word {
  std::uint32_t value = 0;

  friend auto operator<=>(Word, Word) = default;
  explicit operator bool() const { return value != 0; }
};

// A calendar day as days since 1970-01-01; `unknown_day` when nobody wrote it down.
using DayNumber = std::int32_t;
inline constexpr DayNumber unknown_day = INT32_MIN;

}  // namespace backmark::model
