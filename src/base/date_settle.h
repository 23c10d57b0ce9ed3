// What the dates of one text tell each other.
#pragma once

#include "base/date_phrase.h"

namespace backmark {

// A small ordinal that its neighbours have not yet made a century.
bool is_bare_ordinal(const DatePhrase& date);

// Lends numbers, kinds, eras and "about" from one end of a range to the other ("16th to 18th
// century", "480-256 BCE", "1885-90"), takes falling centuries without an era as BCE, and moves
// what is still a bare number to the words left over. Dates that are not joined stay strangers.
void settle(DatePhrases& found);

}  // namespace backmark
