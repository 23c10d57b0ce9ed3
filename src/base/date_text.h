// Dates as catalogues really write them: "c. 1860", "second half of the 19th century", "1950s",
// "about 1916-1920, by 1931", "26th Dynasty (664-525 BCE)", "3/1/1832", "n.d.".
//
// Periods with a name ("Meiji period", "26th Dynasty", "late Qing") are read by
// reference/periods.csv; years beside the name go before it. EDTF is tried first. What is not
// understood is kept and said, never guessed; a text of which nothing is understood has no
// bounds.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/edtf_years.h"
#include "base/json_fwd.h"

namespace backmark {

// What rubbery words are taken to mean, in years. Common practice of one large museum's records
// where it could be counted (c.: 845 of 922 texts mean five years either way); no standard
// says.
struct DateHabits {
  int about = 5;         // "c. 1860": either way
  int early_to = 25;     // "early 19th century": years 0 to 25 of it
  int middle_from = 25;  // "mid-19th century": years 25 to 75
  int middle_to = 75;
  int late_from = 75;  // "late 19th century": years 75 to 99
  // "early Edo", "late Qing": hundredths of a named period. Common practice, no source.
  int period_early_to = 50;
  int period_late_from = 50;
  // "designed 1944, manufactured 1999" is 1999; "designed 1944" alone is 1944 or any later
  // year.
  bool made_over_design = true;
};

enum class DateShape { unread, exact, about, range, decade, century, before, after, undated };

struct DateReading {
  std::string text;         // as written
  bool understood = false;  // bounds on at least one side, or plainly "no date"
  YearBounds bounds;        // whole years; a missing end is open
  DateShape shape = DateShape::unread;
  bool approximate = false;  // "c.", "about"
  bool doubtful = false;     // "?", "possibly"
  std::string edtf;          // the years named, "c." as ~ and "?" as ?; the text itself if EDTF
  std::string earliest;      // ISO day, "-inf", or "unknown"
  std::string latest;
  std::string left_over;  // words that were not understood or not used
};

DateReading read_date_text(std::string_view text, const DateHabits& habits = {});

// {text, understood, earliest, latest, edtf, left_over}.
Json to_json(const DateReading& reading);

// One line a reading: text, earliest, latest, EDTF, left over; columns aligned.
std::string to_table(const std::vector<DateReading>& readings);

}  // namespace backmark
