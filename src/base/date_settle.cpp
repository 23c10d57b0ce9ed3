#include "base/date_settle.h"

#include <algorithm>

namespace backmark {

namespace {

bool linked(const DatePhrase& later) {
  return later.joint == Joint::to || later.joint == Joint::either;
}

void lend_back(const DatePhrase& later, DatePhrase& earlier) {
  if (!linked(later)) {
    return;
  }
  if (earlier.kind == DateKind::bare && later.kind == DateKind::century) {
    earlier.kind = DateKind::century;
  } else if (earlier.kind == DateKind::bare && later.kind == DateKind::year &&
             earlier.digits > 0) {
    earlier.kind = DateKind::year;
  }
  if (earlier.era == DateEra::unsaid) {
    // "1-199 CE" and "480-256 BCE" alike: one era for both.
    earlier.era = later.era;
  }
}

void lend_on(const DatePhrase& earlier, DatePhrase& later) {
  if (!linked(later)) {
    return;
  }
  if (later.kind == DateKind::bare && earlier.kind == DateKind::century) {
    later.kind = DateKind::century;
  }
  const bool short_form = later.digits > 0 && later.digits <= 2 && earlier.digits >= 3;
  if (earlier.kind == DateKind::year && short_form && earlier.era != DateEra::bce &&
      (later.kind == DateKind::bare || later.kind == DateKind::year)) {
    later.kind = DateKind::year;
    later.value += earlier.value / 100 * 100;
    later.digits = earlier.digits;
  }
  later.about = later.about || earlier.about;
  if (later.era == DateEra::unsaid && later.joint == Joint::to && earlier.era == DateEra::bce &&
      later.value < earlier.value) {
    later.era = DateEra::bce;
  }
}

// "late 6th - early 5th": centuries that fall are before Christ.
void date_falling_centuries(std::vector<DatePhrase>& dates) {
  for (std::size_t i = 1; i < dates.size(); ++i) {
    DatePhrase& earlier = dates[i - 1];
    DatePhrase& later = dates[i];
    const bool centuries = earlier.kind == DateKind::century && later.kind == DateKind::century;
    const bool unsaid = earlier.era == DateEra::unsaid && later.era == DateEra::unsaid;
    if (later.joint == Joint::to && centuries && unsaid && later.value < earlier.value) {
      earlier.era = later.era = DateEra::bce;
    }
  }
}

}  // namespace

bool is_bare_ordinal(const DatePhrase& date) {
  return date.kind == DateKind::bare && date.digits == 0;
}

void settle(DatePhrases& found) {
  auto& dates = found.dates;
  for (DatePhrase& date : dates) {
    if (is_bare_ordinal(date) && date.era != DateEra::unsaid) {
      date.kind = DateKind::century;  // "first half 4th BC"
    }
  }
  for (std::size_t i = dates.size(); i-- > 1;) {
    lend_back(dates[i], dates[i - 1]);
  }
  for (std::size_t i = 1; i < dates.size(); ++i) {
    lend_on(dates[i - 1], dates[i]);
  }
  date_falling_centuries(dates);
  for (const DatePhrase& date : dates) {
    if (date.kind == DateKind::bare) {
      found.left_over.push_back(std::to_string(date.value));
    }
  }
  std::erase_if(dates, [](const DatePhrase& date) { return date.kind == DateKind::bare; });
}

}  // namespace backmark
