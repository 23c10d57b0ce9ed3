// Years in words, by the published table (words/table.h).
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/year.h"
#include "model/belief.h"

namespace backmark::words {

struct YearPhrase {
  std::string text;  // "about 1954"
  int row = 10;      // of year_table()
  double p = 0;      // the chance that what it claims is true
};

// A year that stands behind a reasoned limit: nothing on one side of it.
struct YearLimit {
  Year year;
};

// The year named in a limit's reason ("acquired in 1974"): its last group of four figures.
std::optional<YearLimit> limit_in(std::string_view reason);

// The first row of the table that holds. An empty belief is "not dated". `limit` allows row 9:
// "before" the year after it, or "after" the year before it. A `frozen` phrase is kept while
// the chance of its claim stays above its row's floor less frozen_margin and no earlier row
// holds by more than frozen_margin.
YearPhrase phrase_year(const model::YearBelief& belief,
                       const std::optional<YearLimit>& limit = {},
                       std::string_view frozen = {});

// What a phrase of rows 1 to 9 claims: years first to last; open ends are far away (±30000).
// Nothing for other texts. The inverse of phrase_year; used to score phrases and to hold dates
// in prose to the record.
std::optional<YearSpan> claimed_years(std::string_view phrase);
// The row such a phrase belongs to, 0 for other texts.
int row_of_year_phrase(std::string_view phrase);

// "1948–56", "1954", "1898–1903": years as every output writes them.
std::string year_range(YearSpan span);

// The odds for a reader or a screen reader: "16 chances in 20: 1952 to 1957", from the 10 and
// 90 points in 100. "not dated" for an empty belief.
std::string spoken_odds(const model::YearBelief& belief);

}  // namespace backmark::words
