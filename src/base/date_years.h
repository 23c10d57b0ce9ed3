// The years that one phrase of a date text stands for.
#pragma once

#include "base/date_phrase.h"

namespace backmark {

// The years of one phrase whose kind and era are settled. 1 BCE is the year 0; the 19th century
// runs from 1800 to 1899 as catalogues use it, the first from 1 to 99. "About" widens years and
// decades by `habits.about`; a century, a part of one and a named period are rubbery already.
YearSpan years_of(const DatePhrase& phrase, const DateHabits& habits);

}  // namespace backmark
