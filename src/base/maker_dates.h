// The dates that stand behind a maker's name: "1902-1977", "b. 1902", "d. 1931", "fl. 1850s",
// "act. c. 1890-1910", "born Oslo, 1860 - 1930", "est. 1850 - closed 1902".
//
//   text    = *( [place] part )          part   = [keyword] date
//   keyword = "born" "b." / "died" "d." / "active" "act." "fl." "working" / "founded" "est." /
//             "mentioned" "documented" / "closed"
//
// A dash behind a first date without "active" parts birth from death. A lone date without a
// keyword is taken as working years, the least that it can mean. Each date is free text
// (base/date_text.h); places and nations are left over.
#pragma once

#include <string>
#include <string_view>

#include "base/date_text.h"

namespace backmark {

struct MakerDates {
  std::string text;         // as written
  bool understood = false;  // any of the three below has an end
  YearBounds born;          // of a person
  YearBounds died;
  YearBounds active;  // worked, flourished; of a firm: from its founding to its closing
  bool doubtful = false;
  std::string left_over;
};

MakerDates read_maker_dates(std::string_view text, const DateHabits& habits = {});

// The years in which the maker may have worked, with how far each may be off.
struct WorkingYears {
  std::optional<Year> from;
  std::optional<Year> to;
  double from_sd = 4;
  double to_sd = 4;
};

// Working dates as they stand; else from 20 years after birth (6 years either way) to death (6
// years either way, since few work to the last day). An open end is missing. Common practice,
// no source. A life too short for that (died before 20) gives the year of death for both.
WorkingYears working_years(const MakerDates& dates);

}  // namespace backmark
