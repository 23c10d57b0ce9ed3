// The signs a measure is written with: numbers, units, labels, "x". Bodies only.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exchange/measure_text.h"
#include "exchange/unit.h"

namespace backmark::exchange {

// A mark is a single quote, inches or feet; other is whatever is none of these.
enum class Sign { number, unit, label, times, mark, other, end };

// One sign of a cell. A number carries its fraction; "8 3/4" is one sign.
struct Token {
  Sign sign = Sign::end;
  std::string text;
  double number = 0;
  const Unit* unit = nullptr;
  std::string_view key;
};

// The signs of one part of a cell, in order. `decimal`: the decimal mark, 0 if not known. What
// commas and full stops stood between digits goes to `reading`.
std::vector<Token> scan_measure(std::string_view text, char decimal, MeasureReading& reading);

}  // namespace backmark::exchange
