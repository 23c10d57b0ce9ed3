// Prose held to the record: a year that the odds speak against, a name or a certainty that they
// do not allow. A reader of English sentences by plain rules: it sees what is said outright
// ("made in 1962", "by Oda Vessen", "certainly"), and keeps silent where it does not
// understand.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "base/year.h"
#include "model/belief.h"
#include "model/show.h"

namespace backmark::words {

// Sentences, each with its stop. "no. 4", "c. 1950" and initials do not end one.
std::vector<std::string> sentences(std::string_view prose);

// A stretch of years that a sentence speaks of.
struct YearMention {
  std::string text;  // "about 1955", "1948-56", "1950s", "before 1961"
  YearSpan years;    // what it allows: "about" 5 years either way, open ends ±30000
};

// Years from 1000 to 2099 in a sentence, in order. Figures with a unit, a currency or a point
// beside them are no years.
std::vector<YearMention> years_in(std::string_view sentence);

// Whether the sentence says when the piece itself was made: it has a word of making and none
// that turns it to something else ("acquired", "said to", "photographed", "not").
bool speaks_of_making(std::string_view sentence);

// Below this chance a year in prose contradicts the record: the table's phrases with a range
// claim nine in ten, which leaves one.
inline constexpr double least_year_chance = 0.10;

// What the prose about one piece says and its record does not bear. `where` names the text.
//   - a sentence of making with years whose chance is under least_year_chance;
//   - "by X" for a maker whom the table's phrase does not give outright;
//   - "certainly", "without doubt" ... of a year or maker that is only probable.
// Overruled phrases are the curator's own and are taken as they stand.
Problems check_prose(std::string_view prose,
                     const model::Show& show,
                     const model::PieceBelief& belief,
                     const model::Phrases& phrases,
                     const std::string& where);

}  // namespace backmark::words
