#include "desk/calendar.h"

#include <array>
#include <chrono>

#include "base/text.h"

namespace backmark::desk {

namespace {

std::chrono::year_month_day to_date(model::DayNumber day) {
  return std::chrono::sys_days(std::chrono::days(day));
}

}  // namespace

model::DayNumber day_of(std::int64_t seconds) {
  const auto days =
      std::chrono::floor<std::chrono::days>(std::chrono::seconds(seconds)).count();
  return static_cast<model::DayNumber>(days);
}

std::string to_minute(std::int64_t seconds) {
  const auto date = to_date(day_of(seconds));
  const std::int64_t minutes = ((seconds % 86400 + 86400) % 86400) / 60;
  return fmt::format("{}-{:02}-{:02} {:02}:{:02}", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                     minutes / 60, minutes % 60);
}

std::string to_long_day(model::DayNumber day) {
  static constexpr std::array<const char*, 12> months = {
      "January", "February", "March",     "April",   "May",      "June",
      "July",    "August",   "September", "October", "November", "December"};
  if (day == model::unknown_day) {
    return "";
  }
  const auto date = to_date(day);
  return fmt::format("{} {} {}", static_cast<unsigned>(date.day()),
                     months.at(static_cast<unsigned>(date.month()) - 1),
                     static_cast<int>(date.year()));
}

}  // namespace backmark::desk
