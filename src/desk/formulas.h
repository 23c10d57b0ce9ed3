// The formulas that the program uses, by name: what goes in, its units and limits, the source.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/json.h"
#include "base/result.h"

namespace backmark::desk {

struct Input {
  std::string name;
  std::string unit;  // empty: a plain number
  double low = 0;    // outside low to high the formula refuses
  double high = 0;
  bool colour = false;    // written as six hexadecimal digits, with or without "#"
  bool optional = false;  // the formula says what it does without it
  // Not empty: no number is taken but a word; those allowed, parted by bars, or "*" for any
  // text.
  std::string words = {};
};

// What was given for a formula, by name: numbers within their limits, words as written.
class Given {
 public:
  void put(const std::string& name, double number) { numbers_[name] = number; }
  void put(const std::string& name, std::string text) { texts_[name] = std::move(text); }

  bool has(const std::string& name) const {
    return numbers_.count(name) + texts_.count(name) > 0;
  }
  // A number that was given, or `fallback`.
  double number(const std::string& name, double fallback) const;
  // A number that the formula cannot do without; BrokenPromise if it is not there.
  double number(const std::string& name) const;
  // Empty if not given.
  std::string text(const std::string& name) const;

 private:
  std::map<std::string, double> numbers_;
  std::map<std::string, std::string> texts_;
};

struct Reckoned {
  Json value;              // a number or a text
  std::string unit = {};   // empty: the formula's own
  std::string notes = {};  // beside those of the formula
};

// One of `value` (all inputs are numbers, in their order) and `reckon` (some may be left out or
// are words) is set.
struct Formula {
  std::string name;
  std::string what;
  std::vector<Input> inputs;
  std::string unit;
  std::string source;
  std::string notes;
  double (*value)(const std::vector<double>& inputs) = nullptr;
  Result<Reckoned> (*reckon)(const Given& given) = nullptr;
  std::vector<std::string> also = {};  // other things it answers, in words
};

const std::vector<Formula>& formulas();

// "X is missing; write X=..., or Y=...", for formulas that take one thing in several ways.
Problem missing_input(const std::string& what, const std::string& fix);

}  // namespace backmark::desk
