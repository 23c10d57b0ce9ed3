#include "words/year_phrase.h"

#include <array>
#include <cmath>
#include <numeric>
#include <vector>

#include "base/text.h"
#include "words/table.h"

namespace backmark::words {
namespace {

// Sums of many chances miss a floor they reach exactly by rounding alone.
constexpr double rounding = 1e-9;
constexpr int far_away = 30000;
constexpr std::array<std::string_view, 3> thirds{"early ", "mid-", "late "};
constexpr std::array<std::string_view, 7> centuries{"fifteenth",   "sixteenth",  "seventeenth",
                                                    "eighteenth",  "nineteenth", "twentieth",
                                                    "twenty-first"};
constexpr int first_century = 15;

// Cumulative chances, so that any run of years is one subtraction.
class Sums {
 public:
  explicit Sums(const model::YearBelief& belief)
      : span_(belief.span), up_to_(belief.p.size() + 1) {
    std::partial_sum(belief.p.begin(), belief.p.end(), up_to_.begin() + 1);
  }
  double inside(YearSpan run) const { return cut(run.last + 1) - cut(run.first); }
  YearSpan span() const { return span_; }

 private:
  double cut(Year year) const {
    const int cells = static_cast<int>(up_to_.size()) - 1;
    return up_to_[static_cast<std::size_t>(std::clamp(year - span_.first, 0, cells))];
  }
  YearSpan span_;
  std::vector<double> up_to_;
};

struct Run {
  YearSpan years;
  double p = -1;
};

// The likeliest run of `length` years; the earliest of equals.
Run likeliest(const Sums& sums, int length) {
  Run best;
  for (Year first = sums.span().first; first <= sums.span().last; first = first + 1) {
    const YearSpan years{first, first + (length - 1)};
    const double p = sums.inside(years);
    if (p > best.p + rounding) {
      best = {years, p};
    }
  }
  return best;
}

// The shortest run of `least` to `most` years that reaches `floor`, or the likeliest of `most`.
Run shortest(const Sums& sums, int least, int most, double floor) {
  Run run;
  for (int length = least; length <= most; ++length) {
    run = likeliest(sums, length);
    if (run.p >= floor - rounding) {
      return run;
    }
  }
  return run;
}

int floor_to(int value, int step) {
  return value - ((value % step) + step) % step;
}

Run likeliest_decade(const Sums& sums) {
  Run best;
  for (int first = floor_to(sums.span().first.value, 10); first <= sums.span().last.value;
       first += 10) {
    const YearSpan years{{first}, {first + 9}};
    const double p = sums.inside(years);
    if (p > best.p + rounding) {
      best = {years, p};
    }
  }
  return best;
}

// The year whose eleven years are likeliest; of equals the one nearest the median.
Run likeliest_about(const Sums& sums, Year median) {
  Run best;
  Year best_year;
  for (Year year = sums.span().first; year <= sums.span().last; year = year + 1) {
    const double p = sums.inside({year - 5, year + 5});
    const bool nearer = std::abs(year - median) < std::abs(best_year - median);
    if (p > best.p + rounding || (p > best.p - rounding && nearer)) {
      best = {{year - 5, year + 5}, std::max(p, best.p)};
      best_year = year;
    }
  }
  best.p = sums.inside(best.years);
  return best;
}

YearSpan third_of(int century, int which) {
  const int base = (century - 1) * 100;
  const std::array<int, 4> cuts{1, 34, 67, 101};
  const auto at = static_cast<std::size_t>(which);
  return {{base + cuts[at]}, {base + cuts[at + 1] - 1}};
}

std::string third_text(int century, int which) {
  return fmt::format("{}{} century", thirds[static_cast<std::size_t>(which)],
                     centuries[static_cast<std::size_t>(century - first_century)]);
}

YearPhrase third_phrase(const Sums& sums) {
  YearPhrase best{"", 8, -1};
  for (int century = first_century;
       century < first_century + static_cast<int>(centuries.size()); ++century) {
    for (int which = 0; which < 3; ++which) {
      const double p = sums.inside(third_of(century, which));
      if (p > best.p) {
        best = {third_text(century, which), 8, p};
      }
    }
  }
  return best;
}

YearPhrase limit_phrase(const Sums& sums, const std::optional<YearLimit>& limit) {
  if (!limit) {
    return {"", 9, -1};
  }
  const double before = sums.inside({sums.span().first, limit->year});
  const double after = sums.inside({limit->year, sums.span().last});
  if (before >= after) {
    return {fmt::format("before {}", limit->year.value + 1), 9, before};
  }
  return {fmt::format("after {}", limit->year.value - 1), 9, after};
}

// The best phrase of a row and its chance, whether or not it reaches the floor.
YearPhrase candidate(int row,
                     const Sums& sums,
                     Year median,
                     const std::optional<YearLimit>& limit) {
  const double floor = row_of(year_table(), row).floor;
  Run run;
  switch (row) {
    case 1:
    case 2:
      run = likeliest(sums, row);
      return {row == 1 ? year_range(run.years)
                       : fmt::format("{} or {}", run.years.first.value, run.years.last.value),
              row, run.p};
    case 3:
    case 7:
      run = row == 3 ? shortest(sums, 3, 9, floor) : shortest(sums, 10, 30, floor);
      return {year_range(run.years), row, run.p};
    case 4:
    case 6:
      run = likeliest_decade(sums);
      return {fmt::format("{}{}s", row == 6 ? "probably " : "", run.years.first.value), row,
              run.p};
    case 5:
      run = likeliest_about(sums, median);
      return {fmt::format("about {}", run.years.first.value + 5), row, run.p};
    case 8:
      return third_phrase(sums);
    case 9:
      return limit_phrase(sums, limit);
    default:
      return {"not dated", 10, 1};
  }
}

// "1954": a year of three or four figures and nothing else.
std::optional<Year> plain_year(std::string_view text) {
  if (text.size() < 3 || text.size() > 4 ||
      text.find_first_not_of("0123456789") != std::string_view::npos) {
    return {};
  }
  return Year{static_cast<int>(*to_whole(text))};
}

std::optional<YearSpan> decade_in(std::string_view text) {
  if (!ends_with(text, "0s")) {
    return {};
  }
  const auto year = plain_year(text.substr(0, text.size() - 1));
  return year ? std::optional<YearSpan>({*year, *year + 9}) : std::nullopt;
}

std::optional<YearSpan> range_in(std::string_view text) {
  const auto ends = split(text, "–");
  if (ends.size() != 2) {
    return {};
  }
  const auto first = plain_year(ends[0]);
  if (!first) {
    return {};
  }
  if (const auto last = plain_year(ends[1]); last && *first < *last) {
    return YearSpan{*first, *last};
  }
  const auto tail = to_whole(ends[1]);
  if (ends[1].size() != 2 || !tail || *tail < 0) {
    return {};
  }
  const Year last{floor_to(first->value, 100) + static_cast<int>(*tail)};
  return *first < last ? std::optional<YearSpan>({*first, last}) : std::nullopt;
}

std::optional<YearSpan> third_in(std::string_view text) {
  for (int century = first_century;
       century < first_century + static_cast<int>(centuries.size()); ++century) {
    for (int which = 0; which < 3; ++which) {
      if (text == third_text(century, which)) {
        return third_of(century, which);
      }
    }
  }
  return {};
}

struct Reading {
  int row = 0;
  std::optional<YearSpan> years;
};

Reading read_worded(std::string_view text) {
  const auto after = [text](std::string_view head) {
    return starts_with(text, head) ? plain_year(text.substr(head.size())) : std::nullopt;
  };
  if (const auto year = after("about ")) {
    return {5, YearSpan{*year - 5, *year + 5}};
  }
  if (const auto year = after("after ")) {
    return {9, YearSpan{*year + 1, {far_away}}};
  }
  if (const auto year = after("before ")) {
    return {9, YearSpan{{-far_away}, *year - 1}};
  }
  if (starts_with(text, "probably ")) {
    return {6, decade_in(text.substr(9))};
  }
  return {8, third_in(text)};
}

Reading read_phrase(std::string_view text) {
  if (const auto year = plain_year(text)) {
    return {1, YearSpan{*year, *year}};
  }
  if (const auto ends = split(text, " or "); ends.size() == 2) {
    const auto first = plain_year(ends[0]);
    const auto last = plain_year(ends[1]);
    if (first && last && *last - *first == 1) {
      return {2, YearSpan{*first, *last}};
    }
    return {};
  }
  if (const auto range = range_in(text)) {
    return {range->length() <= 9 ? 3 : 7, range};
  }
  if (const auto decade = decade_in(text)) {
    return {4, decade};
  }
  return read_worded(text);
}

// Whether the frozen phrase still stands: its own row left by less than the margin, and no
// earlier row reached by more.
std::optional<YearPhrase> kept(std::string_view frozen,
                               const Sums& sums,
                               Year median,
                               const std::optional<YearLimit>& limit) {
  const Reading reading = read_phrase(frozen);
  if (!reading.years) {
    return {};
  }
  const double p = sums.inside(*reading.years);
  if (p < row_of(year_table(), reading.row).floor - frozen_margin - rounding) {
    return {};
  }
  for (int row = 1; row < reading.row; ++row) {
    const double better = candidate(row, sums, median, limit).p;
    if (better >= row_of(year_table(), row).floor + frozen_margin) {
      return {};
    }
  }
  return YearPhrase{std::string(frozen), reading.row, p};
}

}  // namespace

std::optional<YearLimit> limit_in(std::string_view reason) {
  std::optional<YearLimit> found;
  std::size_t at = 0;
  while ((at = reason.find_first_of("0123456789", at)) != std::string_view::npos) {
    const std::size_t end = std::min(reason.find_first_not_of("0123456789", at), reason.size());
    if (end - at == 4) {
      found = YearLimit{{static_cast<int>(*to_whole(reason.substr(at, 4)))}};
    }
    at = end;
  }
  return found;
}

YearPhrase phrase_year(const model::YearBelief& belief,
                       const std::optional<YearLimit>& limit,
                       std::string_view frozen) {
  if (belief.empty()) {
    return {"not dated", 10, 1};
  }
  const Sums sums(belief);
  const Year median = belief.at(0.5);
  if (const auto old = kept(frozen, sums, median, limit)) {
    return *old;
  }
  for (const TableRow& row : year_table()) {
    YearPhrase phrase = candidate(row.row, sums, median, limit);
    if (phrase.p >= row.floor - rounding) {
      return phrase;
    }
  }
  return {"not dated", 10, 1};
}

std::optional<YearSpan> claimed_years(std::string_view phrase) {
  return read_phrase(phrase).years;
}

int row_of_year_phrase(std::string_view phrase) {
  const Reading reading = read_phrase(phrase);
  return reading.years ? reading.row : 0;
}

std::string year_range(YearSpan span) {
  if (span.first == span.last) {
    return std::to_string(span.first.value);
  }
  const bool short_end =
      span.first.value >= 100 && span.first.value / 100 == span.last.value / 100;
  return short_end ? fmt::format("{}–{:02}", span.first.value, span.last.value % 100)
                   : fmt::format("{}–{}", span.first.value, span.last.value);
}

std::string spoken_odds(const model::YearBelief& belief) {
  if (belief.empty()) {
    return "not dated";
  }
  const YearSpan middle{belief.at(0.10), belief.at(0.90)};
  const double p = belief.inside(middle.first, middle.last);
  // Rounded down, and never twenty in twenty: nothing here is certain.
  const int chances = std::min(19, static_cast<int>(std::floor(20 * p + rounding)));
  return middle.first == middle.last
             ? fmt::format("{} chances in 20: {}", chances, middle.first.value)
             : fmt::format("{} chances in 20: {} to {}", chances, middle.first.value,
                           middle.last.value);
}

}  // namespace backmark::words
