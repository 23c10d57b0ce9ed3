// Some of many, without looking at what they are.
#pragma once

#include <vector>

namespace backmark::evidence {

// At most `most` of the rows, evenly spread, in their order.
template <class T>
std::vector<T> evenly_spread(const std::vector<T>& rows, std::size_t most) {
  if (rows.size() <= most) {
    return rows;
  }
  std::vector<T> some;
  for (std::size_t i = 0; i < most; ++i) {
    some.push_back(rows[i * rows.size() / most]);
  }
  return some;
}

}  // namespace backmark::evidence
