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

// "1920-30", "1955-8", "1950s-60s": the figures left out are those of the earlier date. Not
// where the later would come first: "1955/2" is no 1952.
void lend_leading_figures(const DatePhrase& earlier, DatePhrase& later) {
  const bool short_form = later.digits > 0 && later.digits <= 2 && earlier.digits >= 3;
  const bool years = earlier.kind == DateKind::year &&
                     (later.kind == DateKind::bare || later.kind == DateKind::year);
  const bool decades = earlier.kind == DateKind::decade && later.kind == DateKind::decade;
  if (!short_form || !(years || decades) || earlier.era == DateEra::bce) {
    return;
  }
  const long step = later.digits == 1 ? 10 : 100;
  const long value = earlier.value / step * step + later.value;
  if (value >= earlier.value) {
    later.kind = earlier.kind;
    later.value = value;
    later.digits = earlier.digits;
  }
}

void lend_on(const DatePhrase& earlier, DatePhrase& later) {
  if (!linked(later)) {
    return;
  }
  if (later.kind == DateKind::bare && earlier.kind == DateKind::century) {
    later.kind = DateKind::century;
  }
  lend_leading_figures(earlier, later);
  later.about = later.about || earlier.about;
  if (later.era == DateEra::unsaid && later.joint == Joint::to && earlier.era == DateEra::bce &&
      later.value < earlier.value) {
    later.era = DateEra::bce;
  }
}

// A number that is no year, or a decade whose century nobody named ("50s").
bool is_unsaid(const DatePhrase& date) {
  return date.kind == DateKind::bare ||
         (date.kind == DateKind::decade && date.digits <= 2 && date.era == DateEra::unsaid);
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
    if (is_unsaid(date)) {
      found.left_over.push_back(std::to_string(date.value) +
                                (date.kind == DateKind::decade ? "s" : ""));
    }
  }
  std::erase_if(dates, is_unsaid);
}

}  // namespace backmark
