#include "base/calendar_day.h"

#include "base/text.h"

namespace backmark {

bool is_leap_year(std::int64_t year) {
  return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

int days_in_month(std::int64_t year, int month) {
  static constexpr int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return month == 2 && is_leap_year(year) ? 29 : days[month - 1];
}

std::string to_iso_year(std::int64_t year) {
  if (year < 0) {
    return fmt::format("-{:04}", -year);
  }
  return year > 9999 ? fmt::format("+{}", year) : fmt::format("{:04}", year);
}

std::string to_iso(const CalendarDay& day) {
  return fmt::format("{}-{:02}-{:02}", to_iso_year(day.year), day.month, day.day);
}

}  // namespace backmark
