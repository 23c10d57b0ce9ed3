// What was measured or seen at the bench of one thing. Nothing here is destructive.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "assay/weighing.h"

namespace backmark::assay {

inline constexpr double spot_u = 0.01;      // a spot reading is good to this much, either way
inline constexpr double spot_least = 1.40;  // range of the spot method
inline constexpr double spot_most = 1.81;   // set by the contact liquid

struct Bench {
  std::optional<Density> density;  // of the thing alone, loose and solid
  std::optional<double> spot_index;
  bool index_over = false;                               // above the refractometer's limit
  std::optional<std::pair<double, double>> index_blink;  // lower and upper edge
  std::string uv_long;  // inert, weak, strong; empty: not looked
  std::string uv_short;
  std::string magnet;             // no, weak, yes
  std::vector<std::string> seen;  // structures, as materials.csv names them
  std::optional<double> angle;    // outer Schreger lines, degrees: the mean of `angles`
  int angles = 1;
  std::string fineness_mark;
  std::string group;  // stone, organic, synthetic, glass, metal; empty: any
};

}  // namespace backmark::assay
