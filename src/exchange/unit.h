// Units of length and weight, as maps and cells write them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark::exchange {

// 1 in = 25.4 mm and 1 oz = 28.349523125 g (international yard and pound agreement of 1959);
// 1 ozt = 31.1034768 g; 1 dwt = 1.55517384 g; 1 ct = 0.2 g.
struct Unit {
  std::string_view word;
  double factor = 1;  // to millimetres or grams
  bool weight = false;
  bool in_maps = false;  // the word that maps use: "in", not "inches"
};

// In lower case; null if the word is no unit.
const Unit* find_unit(std::string_view word);
// The words that maps use, lengths first.
std::vector<std::string> map_units();

}  // namespace backmark::exchange
