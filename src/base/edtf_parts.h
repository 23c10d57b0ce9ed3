// The components of one EDTF date as written, before they are given a meaning.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/edtf_date.h"
#include "base/result.h"

namespace backmark {

// A component as digits, any of which may be X.
struct Mask {
  bool negative = false;
  std::string digits;

  // How many of the digits are X, and how many numbers that allows.
  int unspecified() const;
  int completions() const;
  // The completion number `index` counted upwards from the lowest value.
  std::int64_t completed(int index) const;
  // The completions within [low, high], upwards.
  std::vector<int> values(int low, int high) const;
};

// Years from first to last.
struct YearRange {
  std::int64_t first = 0;
  std::int64_t last = 0;
};

struct EdtfParts {
  Mask year;
  std::optional<YearRange> reckoned;  // of a year with Y, E or S: its first and last value
  std::optional<Mask> month;
  std::optional<Mask> day;
  int level = 0;  // that the form of the year asks for
  int right_marks = 0;
  int left_marks = 0;
  bool last_component_marked = false;  // on its right
  DoubtMarks uncertain;
  DoubtMarks approximate;
};

// Reads the grammar of base/edtf_date.h; whether the day exists is not asked here.
// Problems: bad_input.
Result<EdtfParts> read_edtf_parts(std::string_view text);

}  // namespace backmark
