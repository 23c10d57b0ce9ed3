// Days of the proleptic Gregorian calendar, for years of any size.
#pragma once

#include <compare>
#include <cstdint>
#include <string>

namespace backmark {

// One day. Years are astronomical (0 is 1 BCE) and 64 bits wide, since an EDTF may name the
// year minus 170 million; month 1 to 12, day 1 to days_in_month.
struct CalendarDay {
  std::int64_t year = 0;
  int month = 1;
  int day = 1;

  friend auto operator<=>(const CalendarDay&, const CalendarDay&) = default;
};

// The Gregorian rule (every fourth year, but of the hundreds only every fourth), run backwards
// through year 0 as ISO 8601-1 does.
bool is_leap_year(std::int64_t year);

// 28 to 31; month 1 to 12.
int days_in_month(std::int64_t year, int month);

// "0000", "1985", "-1985"; a year of more than four digits carries a sign: "+170000002".
std::string to_iso_year(std::int64_t year);

// "1985-04-12", with the year as in to_iso_year.
std::string to_iso(const CalendarDay& day);

}  // namespace backmark
