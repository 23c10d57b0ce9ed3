#include "base/edtf_date.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "base/edtf_parts.h"
#include "base/text.h"

namespace backmark {

namespace {

// Sub-year codes of ISO 8601-2, 4.8.1; twelve months, the first possibly late in the year.
struct SubYear {
  int code;
  int first_month;
  int months;
  bool season;
};

constexpr SubYear sub_years[] = {
    {21, 3, 3, true},  {22, 6, 3, true},  {23, 9, 3, true},  {24, 12, 3, true},
    {25, 3, 3, true},  {26, 6, 3, true},  {27, 9, 3, true},  {28, 12, 3, true},
    {29, 9, 3, true},  {30, 12, 3, true}, {31, 3, 3, true},  {32, 6, 3, true},
    {33, 1, 3, false}, {34, 4, 3, false}, {35, 7, 3, false}, {36, 10, 3, false},
    {37, 1, 4, false}, {38, 5, 4, false}, {39, 9, 4, false}, {40, 1, 6, false},
    {41, 7, 6, false},
};

const SubYear* find_sub_year(const Mask& month) {
  if (month.unspecified() > 0) {
    return nullptr;
  }
  for (const SubYear& entry : sub_years) {
    if (entry.code == month.completed(0)) {
      return &entry;
    }
  }
  return nullptr;
}

CalendarDay last_of_month(std::int64_t year, int month) {
  return {year, month, days_in_month(year, month)};
}

void set_sub_year(const SubYear& entry, YearRange years, EdtfDate& date) {
  const int last = entry.first_month + entry.months - 1;
  date.earliest = {years.first, entry.first_month, 1};
  date.latest =
      last > 12 ? last_of_month(years.last + 1, last - 12) : last_of_month(years.last, last);
  if (entry.season) {
    date.basis = BoundsBasis::convention;
  }
}

// The first (or, counted downwards, the last) real day among the completions of all components;
// nothing if there is none, as for 1985-02-30.
std::optional<CalendarDay> outermost(const EdtfParts& parts, bool last) {
  const std::vector<int> months = parts.month->values(1, 12);
  const std::vector<int> days = parts.day ? parts.day->values(1, 31) : std::vector<int>{};
  const auto pick = [last](const std::vector<int>& list, std::size_t i) {
    return last ? list[list.size() - 1 - i] : list[i];
  };
  const int count = parts.year.completions();
  for (int index = 0; index < count; ++index) {
    const std::int64_t year = parts.year.completed(last ? count - 1 - index : index);
    for (std::size_t m = 0; m < months.size(); ++m) {
      const int month = pick(months, m);
      if (!parts.day) {
        return last ? last_of_month(year, month) : CalendarDay{year, month, 1};
      }
      for (std::size_t d = 0; d < days.size(); ++d) {
        if (pick(days, d) <= days_in_month(year, month)) {
          return CalendarDay{year, month, pick(days, d)};
        }
      }
    }
  }
  return std::nullopt;
}

bool masked_from_the_right(const EdtfParts& parts) {
  const std::string& year = parts.year.digits;
  if (!parts.month) {
    return year[0] != 'X' && year[1] != 'X' && year[3] == 'X';
  }
  const bool year_known = parts.year.unspecified() == 0;
  if (!parts.day) {
    return year_known && parts.month->digits == "XX";
  }
  return year_known && parts.day->digits == "XX" &&
         (parts.month->unspecified() == 0 || parts.month->digits == "XX");
}

int marks_level(const EdtfParts& parts) {
  if (parts.left_marks == 0 && parts.right_marks == 0) {
    return 0;
  }
  const bool complete = parts.left_marks == 0 && parts.right_marks == 1;
  return complete && parts.last_component_marked ? 1 : 2;
}

Problem no_such_day(std::string_view text) {
  return {Fault::bad_input, fmt::format("\"{}\" is no day of the calendar", text), "",
          "months run from 01 to 12 (or a sub-year code 21 to 41), days to the month's last"};
}

Result<EdtfDate> give_meaning(const EdtfParts& parts, std::string_view text) {
  EdtfDate date;
  date.uncertain = parts.uncertain;
  date.approximate = parts.approximate;
  date.level = std::max(parts.level, marks_level(parts));
  date.masked = parts.year.unspecified() > 0 ||
                (parts.month && parts.month->unspecified() > 0) ||
                (parts.day && parts.day->unspecified() > 0);
  if (date.masked) {
    date.basis = BoundsBasis::hull;
    date.level = std::max(date.level, masked_from_the_right(parts) ? 1 : 2);
  }
  const YearRange years = parts.reckoned.value_or(
      YearRange{parts.year.completed(0), parts.year.completed(parts.year.completions() - 1)});
  if (!parts.month) {
    date.basis = years.first == years.last ? date.basis : BoundsBasis::hull;
    date.earliest = {years.first, 1, 1};
    date.latest = {years.last, 12, 31};
    return date;
  }
  if (const SubYear* entry = find_sub_year(*parts.month)) {
    if (parts.day) {
      return Problem{Fault::bad_input,
                     fmt::format("\"{}\": a season or part of a year takes no day", text), "",
                     "leave the day out"};
    }
    date.level = std::max({date.level, entry->code <= 24 ? 1 : 2, date.masked ? 2 : 0});
    set_sub_year(*entry, years, date);
    return date;
  }
  const auto earliest = outermost(parts, false);
  const auto latest = outermost(parts, true);
  if (!earliest || !latest) {
    return no_such_day(text);
  }
  date.earliest = *earliest;
  date.latest = *latest;
  date.whole_day = parts.day.has_value() && date.level == 0;
  return date;
}

}  // namespace

Result<EdtfDate> parse_edtf_date(std::string_view text) {
  const auto parts = read_edtf_parts(text);
  if (!parts) {
    return parts.problem();
  }
  return give_meaning(*parts, text);
}

}  // namespace backmark
