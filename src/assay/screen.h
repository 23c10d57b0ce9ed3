// Which rules may bear on a piece, with what chance, and what is to be asked. Information for
// asking the right questions, never legal advice.
//
// A rule tests the day of one event. That a piece was made before a day clears no rule that
// tests when it was acquired; that it was made after the day does show that it cannot have been
// acquired before. What a piece is made of was taken before the piece was made, so for a rule
// that tests the taking or the listing the chance of "made before" is a lower bound, which the
// holder must still be able to show.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "model/belief.h"
#include "reference/restriction.h"

namespace backmark::assay {

using Day = std::chrono::year_month_day;

// The chance that a piece was made before a day (strictly), each day of a year alike.
double made_before(const model::YearBelief& belief, Day day);
// The same of a normal belief in decimal years (year + (day - 1) / days of the year).
double made_before(double mean, double sd, Day day);
// year + (day - 1) / days of the year.
double decimal_year(Day day);

struct SeenMaterial {
  std::string word;      // as recorded, lower case
  std::string part;      // empty: the piece as a whole
  double certainty = 1;  // of who saw it
};

struct OnRecord {
  std::vector<SeenMaterial> materials;
  model::YearBelief year;           // empty: not dated
  std::optional<Year> acquired_by;  // latest year of the first acquisition on record
  std::optional<Year> acquired_from;
  Day opening{};  // of the show: what "100 years" is counted from
};

enum class State { cleared, ask, hold };
std::string_view word_of(State state);

struct Screened {
  const reference::Restriction* rule = nullptr;
  std::string word;
  std::string part;
  double p_restricted = 0;              // that it is the restricted thing at all
  Day before{};                         // the rule's day
  std::optional<double> p_before;       // that the event was before it; none: not known
  std::optional<double> p_made_before;  // none: the piece is not dated
  State state = State::ask;
  std::string known;  // what is known of the event, in words
};

// Nothing for materials of which the table knows no rule.
std::vector<Screened> screen(const OnRecord& record);

}  // namespace backmark::assay
