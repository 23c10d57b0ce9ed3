#include "exchange/unit.h"

#include <algorithm>
#include <array>

namespace backmark::exchange {

namespace {

constexpr std::array<Unit, 25> units{{{"mm", 1, false, true},
                                      {"millimetres", 1, false},
                                      {"millimeters", 1, false},
                                      {"cm", 10, false, true},
                                      {"cms", 10, false},
                                      {"centimetres", 10, false},
                                      {"centimeters", 10, false},
                                      {"m", 1000, false, true},
                                      {"in", 25.4, false, true},
                                      {"ins", 25.4, false},
                                      {"inch", 25.4, false},
                                      {"inches", 25.4, false},
                                      {"\"", 25.4, false},
                                      {"ft", 304.8, false, true},
                                      {"feet", 304.8, false},
                                      {"g", 1, true, true},
                                      {"gr", 1, true},
                                      {"gm", 1, true},
                                      {"grams", 1, true},
                                      {"kg", 1000, true, true},
                                      {"oz", 28.349523125, true, true},
                                      {"ounces", 28.349523125, true},
                                      {"ozt", 31.1034768, true, true},
                                      {"dwt", 1.55517384, true, true},
                                      {"ct", 0.2, true, true}}};

}  // namespace

const Unit* find_unit(std::string_view word) {
  const auto* const at = std::find_if(units.begin(), units.end(),
                                      [&](const Unit& unit) { return unit.word == word; });
  return at == units.end() ? nullptr : at;
}

std::vector<std::string> map_units() {
  std::vector<std::string> words;
  for (const Unit& unit : units) {
    if (unit.in_maps) {
      words.emplace_back(unit.word);
    }
  }
  return words;
}

}  // namespace backmark::exchange
