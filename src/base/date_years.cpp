#include "base/date_years.h"

#include <algorithm>

#include "base/named_period.h"

namespace backmark {

namespace {

// Where "early", "mid" and "late" fall, in hundredths of the whole.
struct Shares {
  int early_to, middle_from, middle_to, late_from;
};

Shares shares_of(const DateHabits& habits) {
  return {habits.early_to, habits.middle_from, habits.middle_to, habits.late_from};
}

// A dynasty is halved, not quartered: "late Qing" is its second half.
Shares shares_of_period(const DateHabits& habits) {
  return {habits.period_early_to, habits.middle_from, habits.middle_to,
          habits.period_late_from};
}

// The part of [0, length) that "early", "second quarter" and so on leave.
std::pair<int, int> one_part(const DatePhrase& phrase, const Shares& shares, int length) {
  const auto scaled = [length](int share) { return share * length / 100; };
  switch (phrase.part) {
    case DateWord::early:
      return {0, std::min(scaled(shares.early_to), length - 1)};
    case DateWord::middle:
      return {scaled(shares.middle_from), scaled(shares.middle_to)};
    case DateWord::late:
      return {scaled(shares.late_from), length - 1};
    case DateWord::fraction: {
      const int number = phrase.part_number < 0 ? phrase.part_of : phrase.part_number;
      return {length * (number - 1) / phrase.part_of, length * number / phrase.part_of - 1};
    }
    default:
      return {0, length - 1};
  }
}

std::pair<int, int> part_of(const DatePhrase& phrase, const Shares& shares, int length) {
  const auto from = one_part(phrase, shares, length);
  if (phrase.part_until == DateWord::filler) {
    return from;
  }
  DatePhrase until = phrase;
  until.part = phrase.part_until;
  return {from.first, one_part(until, shares, length).second};
}

Year at(long year) {
  return Year{static_cast<std::int32_t>(year)};
}

YearSpan years_of_century(const DatePhrase& phrase, const DateHabits& habits) {
  const bool bce = phrase.era == DateEra::bce;
  const long first = bce ? 1 - phrase.value * 100 : (phrase.value - 1) * 100;
  const auto [from, to] = part_of(phrase, shares_of(habits), 100);
  const long floor = !bce && phrase.value == 1 ? 1 : first + from;
  return {at(std::max(floor, first + from)), at(first + to)};
}

YearSpan years_of_decade(const DatePhrase& phrase, const DateHabits& habits, int slack) {
  const auto [from, to] = part_of(phrase, shares_of(habits), 10);
  const long first = phrase.era == DateEra::bce ? 1 - (phrase.value + 9) : phrase.value;
  return {at(first + from - slack), at(first + to + slack)};
}

YearSpan years_of_period(const DatePhrase& phrase, const DateHabits& habits) {
  const NamedPeriod& period = named_periods()[static_cast<std::size_t>(phrase.value)];
  const int length = static_cast<int>(period.years.length());
  const auto [from, to] = part_of(phrase, shares_of_period(habits), length);
  return {period.years.first + from, period.years.first + to};
}

}  // namespace

YearSpan years_of(const DatePhrase& phrase, const DateHabits& habits) {
  const int slack = phrase.about ? habits.about : 0;
  switch (phrase.kind) {
    case DateKind::century:
      return years_of_century(phrase, habits);
    case DateKind::decade:
      return years_of_decade(phrase, habits, slack);
    case DateKind::period:
      return years_of_period(phrase, habits);
    default: {
      const long year = phrase.era == DateEra::bce ? 1 - phrase.value : phrase.value;
      return {at(year - slack), at(year + slack)};
    }
  }
}

}  // namespace backmark
