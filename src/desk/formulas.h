// The formulas that the program uses, by name: what goes in, its units and limits, the source.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"

namespace backmark::desk {

struct Input {
  std::string name;
  std::string unit;  // empty: a plain number
  double low = 0;    // outside low to high the formula refuses
  double high = 0;
  bool colour = false;  // written as six hexadecimal digits
};

struct Formula {
  std::string name;
  std::string what;
  std::vector<Input> inputs;
  std::string unit;
  std::string source;
  std::string notes;
  double (*value)(const std::vector<double>& inputs) = nullptr;
};

const std::vector<Formula>& formulas();

}  // namespace backmark::desk
