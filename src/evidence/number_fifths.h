// Measures cut into five classes of about as many pieces each, for charts.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace backmark::evidence {

using Measured = std::pair<double, std::size_t>;  // number, piece

struct Fifth {
  double least = 0, most = 0;       // of the numbers in it
  std::vector<std::size_t> pieces;  // ascending
};

// From small to large; equal numbers stay together, so there may be fewer than five. Fewer than
// ten numbers: none.
std::vector<Fifth> in_fifths(std::vector<Measured> numbers);

// "22 to 25 mm".
std::string words_for(const Fifth& fifth, std::string_view unit);

}  // namespace backmark::evidence
