// Sizes and weights as catalogues write them: "L: 8 3/4 in.", "5.875", "12,5 cm", "H: 3 7/16
// in. x W: 2 in.", "4 5/16' diam.", "17 x 14 in. | 43.2 x 35.6 cm.".
//
//   cell   = part *( ("|" / line break / ";") part )       part = [label ":"] group
//   group  = size *( "x" size ) [unit]                      size = [label] number [label]
//   [unit] number = whole [fraction] / fraction / decimal          fraction = digits "/"
//   digits, or a sign
//
// A single quote mark after a number is written for inches in such cells as often as for feet;
// it is taken for inches, and said, unless the map's unit is "ft".
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark::exchange {

// Lengths come in millimetres, weights in grams; units are those of exchange/unit.h.
struct Measure {
  std::string
      key;  // "height", "width", "depth", "length", "diameter", "thickness", "weight"; else ""
  double value = 0;
  std::string unit;  // "mm" or "g"
};

struct MeasureReading {
  std::vector<Measure> measures;  // one of a kind: the first part of the thing
  std::string left_over;          // what was not understood or belongs to further parts
  bool ambiguous = false;         // "1,250": the map must say what the comma is
  bool had_comma = false;         // a comma between digits
  bool had_point = false;         // a full stop between digits
};

struct MeasureHabits {
  std::string unit;    // where the cell names none; empty: such numbers are left over
  char decimal = '.';  // or ','; 0: not known
  // What the numbers of an unlabelled "a x b x c" are, in turn.
  std::vector<std::string> order{"height", "width", "depth"};
};

MeasureReading read_measures(std::string_view cell, const MeasureHabits& habits);

}  // namespace backmark::exchange
