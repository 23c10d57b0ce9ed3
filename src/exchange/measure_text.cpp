#include "exchange/measure_text.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "exchange/measure_sign.h"

namespace backmark::exchange {

namespace {

struct Size {
  double number = 0;
  std::string key;
  const Unit* unit = nullptr;
};

// Turns signs into sizes: a label before or after a number is the number's, a unit is that of
// every number before it that has none.
struct Group {
  std::vector<Size> sizes;
  std::vector<std::string> words;  // not understood
  std::string waiting;             // a label that stands before its number
  bool quote_marks = false;

  void take(const Token& token, const MeasureHabits& habits) {
    switch (token.sign) {
      case Sign::number:
        sizes.push_back({.number = token.number, .key = waiting});
        waiting.clear();
        break;
      case Sign::label:
        take_label(std::string(token.key));
        break;
      case Sign::unit:
        give_unit(token.unit);
        break;
      case Sign::mark:
        quote_marks = true;
        give_unit(find_unit(habits.unit == "ft" ? "ft" : "in"));
        break;
      case Sign::other:
        words.push_back(token.text);
        break;
      case Sign::times:
      case Sign::end:
        break;
    }
  }

  void take_label(const std::string& key) {
    if (!sizes.empty() && sizes.back().key.empty() && waiting.empty()) {
      sizes.back().key = key;
    } else {
      waiting = key;
    }
  }

  void give_unit(const Unit* unit) {
    for (auto size = sizes.rbegin(); size != sizes.rend() && size->unit == nullptr; ++size) {
      size->unit = unit;
    }
  }
};

// A label that stands before the first number goes with the numbers that follow; one after a
// number must be told from one before the next.
void take_tokens(const std::vector<Token>& tokens, const MeasureHabits& habits, Group& group) {
  const auto first = std::find_if(tokens.begin(), tokens.end(), [](const Token& token) {
    return token.sign == Sign::label || token.sign == Sign::number;
  });
  const bool label_first = first != tokens.end() && first->sign == Sign::label;
  for (const Token& token : tokens) {
    if (token.sign == Sign::label && label_first) {
      group.waiting = token.key;
    } else {
      group.take(token, habits);
    }
  }
}

void name_by_order(Group& group, const MeasureHabits& habits) {
  for (std::size_t i = 0; i < group.sizes.size() && i < habits.order.size(); ++i) {
    Size& size = group.sizes[i];
    if (size.key.empty() && !(size.unit != nullptr && size.unit->weight)) {
      size.key = habits.order[i];
    }
  }
}

const Measure* held(const MeasureReading& reading, std::string_view key) {
  const auto at = std::find_if(reading.measures.begin(), reading.measures.end(),
                               [&](const Measure& measure) { return measure.key == key; });
  return at == reading.measures.end() ? nullptr : &*at;
}

// False if the size stays out: no unit, nothing it could be, or another part's.
bool keep(const Size& size, MeasureReading& reading) {
  if (size.unit == nullptr || size.number <= 0) {
    return false;
  }
  const std::string key = size.unit->weight ? "weight" : size.key;
  const double value = size.number * size.unit->factor;
  if (const Measure* first = held(reading, key)) {
    // The same in another unit, rounded to its own digits.
    return std::abs(first->value - value) <= 0.03 * first->value + 0.5;
  }
  reading.measures.push_back(
      {.key = key, .value = value, .unit = size.unit->weight ? "g" : "mm"});
  return true;
}

std::vector<std::string_view> parts_of(std::string_view cell) {
  std::vector<std::string_view> parts;
  std::size_t begin = 0;
  for (std::size_t i = 0; i <= cell.size(); ++i) {
    if (i == cell.size() || cell[i] == '|' || cell[i] == '\n' || cell[i] == '\r' ||
        cell[i] == ';') {
      if (const auto part = trim(cell.substr(begin, i - begin)); !part.empty()) {
        parts.push_back(part);
      }
      begin = i + 1;
    }
  }
  return parts;
}

// A number that could not be read spoils those beside it: "9 12/ in." is not nine inches.
bool begins_with_digit(const std::string& word) {
  return word.front() >= '0' && word.front() <= '9';
}

bool is_about(std::string_view word) {
  return word == "c" || word == "ca" || word == "about" || word == "approx" || word == "and";
}

}  // namespace

MeasureReading read_measures(std::string_view cell, const MeasureHabits& habits) {
  MeasureReading reading;
  std::vector<std::string> left;
  for (const std::string_view part : parts_of(cell)) {
    const auto tokens = scan_measure(part, habits.decimal, reading);
    Group group;
    take_tokens(tokens, habits, group);
    if (!habits.unit.empty()) {
      group.give_unit(find_unit(habits.unit));
    }
    name_by_order(group, habits);
    const bool broken = std::any_of(group.words.begin(), group.words.end(), begins_with_digit);
    bool all = !group.sizes.empty() && !broken;
    for (const Size& size : group.sizes) {
      all = !broken && keep(size, reading) && all;
    }
    const bool strange = std::any_of(group.words.begin(), group.words.end(),
                                     [](const std::string& word) { return !is_about(word); });
    if (!all || strange) {
      left.emplace_back(part);
    }
  }
  reading.left_over = join(left, " | ");
  return reading;
}

}  // namespace backmark::exchange
