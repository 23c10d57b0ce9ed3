#include "base/date_text.h"

#include <algorithm>

#include "base/date_phrase.h"
#include "base/date_years.h"
#include "base/edtf.h"
#include "base/json.h"
#include "base/text.h"

namespace backmark {

namespace {

// A run of phrases joined by dashes or "or", as one stretch of years.
struct Stretch {
  YearBounds bounds;
  DateSide side = DateSide::within;
  DateRole role = DateRole::none;
  DateShape shape = DateShape::exact;
  bool about = false;
  std::string period;  // its names, if it is nothing but named periods
};

DateShape shape_of(const DatePhrase& phrase) {
  if (phrase.side != DateSide::within) {
    return phrase.side == DateSide::before ? DateShape::before : DateShape::after;
  }
  switch (phrase.kind) {
    case DateKind::century:
      return DateShape::century;
    case DateKind::decade:
      return DateShape::decade;
    case DateKind::period:
      return DateShape::range;
    default:
      return phrase.about ? DateShape::about : DateShape::exact;
  }
}

YearBounds bounds_of(const DatePhrase& phrase, const DateHabits& habits) {
  const YearSpan span = years_of(phrase, habits);
  switch (phrase.side) {
    case DateSide::before:
      return {std::nullopt, phrase.with_limit ? span.last : span.first - 1};
    case DateSide::after:
      return {phrase.with_limit ? span.first : span.last + 1, std::nullopt};
    default:
      return {phrase.open_start ? std::nullopt : std::optional<Year>(span.first),
              phrase.open_end ? std::nullopt : std::optional<Year>(span.last)};
  }
}

YearBounds hull(const YearBounds& a, const YearBounds& b) {
  YearBounds both;
  if (a.earliest && b.earliest) {
    both.earliest = std::min(*a.earliest, *b.earliest);
  }
  if (a.latest && b.latest) {
    both.latest = std::max(*a.latest, *b.latest);
  }
  return both;
}

std::vector<Stretch> stretches(const std::vector<DatePhrase>& dates, const DateHabits& habits) {
  std::vector<Stretch> all;
  for (const DatePhrase& date : dates) {
    const YearBounds bounds = bounds_of(date, habits);
    if ((date.joint == Joint::to || date.joint == Joint::either) && !all.empty()) {
      Stretch& open = all.back();
      open.bounds = hull(open.bounds, bounds);
      open.about = open.about || date.about;
      open.shape = open.shape == DateShape::century ? DateShape::century : DateShape::range;
      open.role = open.role == DateRole::none ? date.role : open.role;
      open.period =
          date.name.empty() || open.period.empty() ? "" : open.period + " " + date.name;
    } else {
      all.push_back({bounds, date.side, date.role, shape_of(date), date.about, date.name});
    }
  }
  return all;
}

bool apart(const YearBounds& a, const YearBounds& b) {
  return (a.latest && b.earliest && *a.latest < *b.earliest) ||
         (b.latest && a.earliest && *b.latest < *a.earliest);
}

YearBounds meet(const YearBounds& a, const YearBounds& b) {
  YearBounds both = a;
  if (b.earliest && (!a.earliest || *a.earliest < *b.earliest)) {
    both.earliest = b.earliest;
  }
  if (b.latest && (!a.latest || *b.latest < *a.latest)) {
    both.latest = b.latest;
  }
  return both;
}

// Dates set side by side: those that overlap narrow each other ("Ming Dynasty, 1368-1644, 16th
// century"), those that do not are all meant ("1810-1812, 1818").
Stretch together(const std::vector<Stretch>& all) {
  Stretch sum = all.front();
  for (std::size_t i = 1; i < all.size(); ++i) {
    const Stretch& next = all[i];
    const bool separate = apart(sum.bounds, next.bounds);
    sum.bounds = separate ? hull(sum.bounds, next.bounds) : meet(sum.bounds, next.bounds);
    sum.shape = separate                        ? DateShape::range
                : next.side == DateSide::within ? next.shape
                                                : sum.shape;
    sum.about = sum.about || next.about;
  }
  return sum;
}

std::vector<Stretch> of_the_making(std::vector<Stretch> all, const DateHabits& habits) {
  const auto is_made = [](const Stretch& one) { return one.role == DateRole::made; };
  const auto is_design = [](const Stretch& one) { return one.role == DateRole::design; };
  const auto is_altered = [](const Stretch& one) { return one.role == DateRole::altered; };
  if (!all.empty() && std::all_of(all.begin(), all.end(), is_altered)) {
    for (Stretch& one : all) {
      one.bounds.earliest.reset();  // made then or any time before
      one.shape = DateShape::before;
    }
  } else {
    std::erase_if(all, is_altered);
  }
  if (!habits.made_over_design) {
    return all;
  }
  if (std::any_of(all.begin(), all.end(), is_made)) {
    std::erase_if(all, [&](const Stretch& one) { return !is_made(one); });
  } else if (!all.empty() && std::all_of(all.begin(), all.end(), is_design)) {
    for (Stretch& one : all) {
      one.bounds.latest.reset();  // made then or any time later
      one.shape = DateShape::after;
    }
  } else {
    std::erase_if(all, is_design);
  }
  return all;
}

// Years say more than the name of their period; the name is left over if it disagrees.
std::vector<Stretch> years_over_periods(std::vector<Stretch> all,
                                        std::vector<std::string>& left_over) {
  const auto is_period = [](const Stretch& one) { return !one.period.empty(); };
  std::vector<Stretch> years = all;
  std::erase_if(years, is_period);
  if (years.empty()) {
    return all;
  }
  const Stretch sum = together(years);
  for (const Stretch& one : all) {
    if (is_period(one) && apart(one.bounds, sum.bounds)) {
      left_over.push_back(one.period);
    }
  }
  return years;
}

std::string iso(const std::optional<Year>& year, bool start) {
  if (!year) {
    return start ? "-inf" : "+inf";
  }
  return to_iso({year->value, start ? 1 : 12, start ? 1 : 31});
}

void fill(DateReading& reading, const Stretch& sum) {
  reading.understood = true;
  reading.bounds = sum.bounds;
  if (reading.bounds.earliest && reading.bounds.latest &&
      *reading.bounds.latest < *reading.bounds.earliest) {
    std::swap(reading.bounds.earliest, reading.bounds.latest);
  }
  reading.shape = sum.shape;
  reading.approximate = sum.about;
  reading.earliest = iso(reading.bounds.earliest, true);
  reading.latest = iso(reading.bounds.latest, false);
}

DateReading from_edtf(std::string_view text, const Edtf& edtf) {
  DateReading reading;
  reading.text = text;
  reading.understood = true;
  reading.bounds = year_bounds(edtf);
  reading.approximate = edtf.approximate();
  reading.doubtful = edtf.uncertain();
  const auto span = reading.bounds.span();
  reading.shape = !reading.bounds.earliest      ? DateShape::before
                  : !reading.bounds.latest      ? DateShape::after
                  : reading.approximate         ? DateShape::about
                  : span && span->length() == 1 ? DateShape::exact
                                                : DateShape::range;
  reading.edtf = edtf.text;
  reading.earliest = earliest_text(edtf);
  reading.latest = latest_text(edtf);
  return reading;
}

void say_undated(DateReading& reading) {
  reading.understood = true;
  reading.shape = DateShape::undated;
  reading.earliest = reading.latest = "unknown";
}

// The years named, marked ~ for "about": EDTF has a mark for it and the widening is a habit,
// which the next reader may not share.
std::string as_edtf(const DatePhrases& phrases, DateHabits habits) {
  habits.about = 0;
  std::vector<std::string> left_over;
  const auto all =
      of_the_making(years_over_periods(stretches(phrases.dates, habits), left_over), habits);
  const Stretch sum = together(all);
  return write_edtf(sum.bounds, sum.about, phrases.doubtful);
}

// "1920-30" is spring 1920 of the south in EDTF (codes 21 to 41); in a catalogue it is ten
// years. A month is left a month: "1907-11" is November 1907.
bool is_short_range(std::string_view text) {
  if (text.size() != 7 || text[4] != '-') {
    return false;
  }
  const auto from = to_whole(text.substr(2, 2));
  const auto to = to_whole(text.substr(5, 2));
  return from && to && *to > 12 && *to > *from;
}

}  // namespace

DateReading read_date_text(std::string_view text, const DateHabits& habits) {
  const std::string_view bare = trim(text);
  if (const auto edtf = parse_strict_edtf(bare); edtf && !is_short_range(bare)) {
    return from_edtf(text, *edtf);
  }
  DateReading reading;
  reading.text = text;
  reading.earliest = reading.latest = "unknown";
  DatePhrases phrases = date_phrases(date_tokens(bare));
  reading.doubtful = phrases.doubtful;
  const auto all = of_the_making(
      years_over_periods(stretches(phrases.dates, habits), phrases.left_over), habits);
  reading.left_over = join(phrases.left_over, " ");
  if (!all.empty()) {
    fill(reading, together(all));
    reading.edtf = as_edtf(phrases, habits);
  } else if (phrases.undated && phrases.left_over.empty()) {
    say_undated(reading);
  } else if (phrases.left_over.empty()) {
    reading.left_over = bare;
  }
  return reading;
}

Json to_json(const DateReading& reading) {
  return {{"text", reading.text},         {"understood", reading.understood},
          {"earliest", reading.earliest}, {"latest", reading.latest},
          {"edtf", reading.edtf},         {"left_over", reading.left_over}};
}

std::string to_table(const std::vector<DateReading>& readings) {
  std::size_t widest = 4;
  for (const DateReading& reading : readings) {
    widest = std::max(widest, to_code_points(reading.text).size());
  }
  const auto row = [widest](const DateReading& of) {
    return without_trailing_spaces(fmt::format("{}  {:<11} {:<11} {:<15} {}",
                                               padded(of.text, widest), of.earliest, of.latest,
                                               of.edtf, of.left_over)) +
           "\n";
  };
  DateReading head;
  head.text = "text";
  head.earliest = "earliest";
  head.latest = "latest";
  head.edtf = "EDTF";
  head.left_over = "left over";
  std::string table = row(head);
  for (const DateReading& reading : readings) {
    table += row(reading);
  }
  return table;
}

}  // namespace backmark
