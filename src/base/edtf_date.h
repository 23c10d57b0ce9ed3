// One date of an EDTF expression: what stands alone, at an end of an interval, or in a set.
#pragma once

#include <string_view>

#include "base/calendar_day.h"
#include "base/result.h"

namespace backmark {

// Which components a doubt mark covers.
struct DoubtMarks {
  bool year = false;
  bool month = false;
  bool day = false;

  friend bool operator==(DoubtMarks, DoubtMarks) = default;
  bool any() const { return year || month || day; }
};

// What the bounds of an expression rest on.
enum class BoundsBasis {
  exact,       // the text names one unbroken span
  hull,        // the outermost days of several candidate values
  convention,  // a season: the standard gives no months, so these are our habit
};

// A date expression and the days it allows. Marks never move the bounds (ISO 8601-2, 8.4.2
// note).
struct EdtfDate {
  int level = 0;  // of ISO 8601-2 Annex A: 0, 1 or 2
  BoundsBasis basis = BoundsBasis::exact;
  bool masked = false;     // holds an X
  bool whole_day = false;  // a plain YYYY-MM-DD, to which a time may be added
  CalendarDay earliest;
  CalendarDay latest;
  DoubtMarks uncertain;
  DoubtMarks approximate;
};

// date  = [mark] year [mark] [ "-" [mark] two [mark] [ "-" [mark] two [mark] ] ]
// year  = ["-"] 4(digit / "X") ["S" digits]
//       / "Y" ["-"] digits ["E" digits] ["S" digits]
// two   = 2(digit / "X")       a month, a day, or (months only) a sub-year code 21 to 41
// mark  = "?" / "~" / "%"      right of a component: it and all to its left; left: it alone
//
// Habit declared for seasons (codes 21 to 32): meteorological, northern unless the code says
// southern: spring March to May, winter December to February of the next year.
// Problems: bad_input, with what is wrong and how to write it.
Result<EdtfDate> parse_edtf_date(std::string_view text);

}  // namespace backmark
