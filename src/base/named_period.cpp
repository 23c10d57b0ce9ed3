#include "base/named_period.h"

#include <algorithm>
#include <map>
#include <optional>

#include "base/text.h"

namespace backmark {

// reference/periods.csv; the build writes it.
extern const char* const periods_csv;

namespace {

// A table of our own: no quotes, no commas in cells, and a wrong row is a wrong program.
NamedPeriod period_of(std::string_view row) {
  const auto cells = split(row, ",");
  const auto first = cells.size() == 6 ? to_whole(cells[2]) : std::nullopt;
  const auto last = cells.size() == 6 ? to_whole(cells[3]) : std::nullopt;
  if (!first || !last || *last < *first || *first == 0 || *last == 0) {
    throw BrokenPromise(fmt::format("periods.csv has a bad row: {}", row));
  }
  const auto astronomical = [](long year) {
    return Year{static_cast<std::int32_t>(year < 0 ? year + 1 : year)};
  };
  NamedPeriod period{std::string(cells[0]),
                     {},
                     {astronomical(*first), astronomical(*last)},
                     std::string(cells[4]),
                     std::string(cells[5])};
  for (const std::string_view name : split(cells[1], "|")) {
    period.names.emplace_back(name);
  }
  return period;
}

std::vector<NamedPeriod> read_periods() {
  std::vector<NamedPeriod> periods;
  const auto rows = split(periods_csv, "\n");
  for (std::size_t i = 1; i < rows.size(); ++i) {
    if (!rows[i].empty()) {
      periods.push_back(period_of(rows[i]));
    }
  }
  return periods;
}

// Only letters and figures, in lower case: "Ch'ing" and "Ching" are one name.
std::string bare_name(std::string_view text) {
  std::string bare;
  for (const char c : lower_ascii(text)) {
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
      bare += c;
    }
  }
  return bare;
}

const std::map<std::string, long>& places_by_name() {
  static const std::map<std::string, long> places = [] {
    std::map<std::string, long> made;
    const auto& periods = named_periods();
    for (std::size_t i = 0; i < periods.size(); ++i) {
      for (const std::string& name : periods[i].names) {
        made.emplace(bare_name(name), static_cast<long>(i));
      }
    }
    return made;
  }();
  return places;
}

// "XVIII"; no check of order beyond what a dynasty's number needs.
std::optional<long> roman_value(std::string_view text) {
  long value = 0;
  long before = 0;
  for (std::size_t i = text.size(); i-- > 0;) {
    const long digit = text[i] == 'I' ? 1 : text[i] == 'V' ? 5 : text[i] == 'X' ? 10 : 0;
    if (digit == 0) {
      return std::nullopt;
    }
    value += digit < before ? -digit : digit;
    before = std::max(before, digit);
  }
  return value == 0 ? std::nullopt : std::optional(value);
}

struct Match {
  long place = 0;
  std::size_t length = 0;  // tokens
};

class PeriodFinder {
 public:
  explicit PeriodFinder(std::vector<DateToken> tokens) : tokens_(std::move(tokens)) {}

  std::vector<DateToken> read() {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      auto match = dynasty_at(i);
      if (!match) {
        match = name_at(i);
      }
      if (match) {
        merge(i, *match);
      }
    }
    return std::move(tokens_);
  }

 private:
  bool is(std::size_t at, DateWord word) const {
    return at < tokens_.size() && tokens_[at].word == word;
  }
  bool says(std::size_t at, std::string_view word) const {
    return at < tokens_.size() && lower_ascii(tokens_[at].text) == word;
  }
  bool is_period_word(std::size_t at) const {
    return says(at, "period") || says(at, "dynasty") || says(at, "era") || says(at, "reign");
  }

  // "26th Dynasty", "Dynasty 26", "Dynasty XXVI", and the 18th of "18th or 19th Dynasty".
  std::optional<Match> dynasty_at(std::size_t at) const {
    if (is(at, DateWord::ordinal)) {
      if (says(at + 1, "dynasty")) {
        return numbered(tokens_[at].value, 2);
      }
      const bool joined = is(at + 1, DateWord::to) || is(at + 1, DateWord::either) ||
                          is(at + 1, DateWord::slash);
      if (joined && is(at + 2, DateWord::ordinal) && says(at + 3, "dynasty")) {
        return numbered(tokens_[at].value, 1);
      }
    }
    if (says(at, "dynasty") && is(at + 1, DateWord::number) && tokens_[at + 1].digits <= 2) {
      return numbered(tokens_[at + 1].value, 2);
    }
    if (says(at, "dynasty") && is(at + 1, DateWord::other)) {
      const auto number = roman_value(tokens_[at + 1].text);
      return number ? numbered(*number, 2) : std::nullopt;
    }
    return std::nullopt;
  }

  static std::optional<Match> numbered(long number, std::size_t length) {
    const auto place = places_by_name().find(fmt::format("dynasty{}", number));
    return place == places_by_name().end() ? std::nullopt
                                           : std::optional(Match{place->second, length});
  }

  // The longest name that starts here, and the word "period" behind it.
  std::optional<Match> name_at(std::size_t at) const {
    if (bare_name(tokens_[at].text).empty()) {
      return std::nullopt;
    }
    constexpr std::size_t longest = 4;
    std::string name;
    std::optional<Match> best;
    for (std::size_t i = at; i < std::min(at + longest, tokens_.size()); ++i) {
      const std::string word = bare_name(tokens_[i].text);
      name += word;
      const auto place = places_by_name().find(name);
      if (place != places_by_name().end() && !word.empty()) {
        best = Match{place->second, i - at + 1};
      }
    }
    if (!best || !stands_free(at, at + best->length)) {
      return std::nullopt;
    }
    if (is_period_word(at + best->length)) {
      ++best->length;
    }
    return best;
  }

  bool stands_free(std::size_t first, std::size_t end) const {
    if (is_period_word(end)) {
      return true;
    }
    // "Victorian-style", and "Meiji-Taisho": what stands behind the dash?
    const std::size_t next = end + (is(end, DateWord::to) ? 1 : 0);
    const bool before = first > 0 && is(first - 1, DateWord::other);
    const bool behind = is(next, DateWord::other) && !names_a_period(next);
    return !before && !behind;
  }

  bool names_a_period(std::size_t at) const {
    const auto& places = places_by_name();
    std::string name = bare_name(tokens_[at].text);
    return places.count(name) > 0 || (at + 1 < tokens_.size() &&
                                      places.count(name + bare_name(tokens_[at + 1].text)) > 0);
  }

  void merge(std::size_t at, const Match& match) {
    DateToken token{DateWord::period, match.place, 0, tokens_[at].text};
    for (std::size_t i = at + 1; i < at + match.length; ++i) {
      token.text += " " + tokens_[i].text;
    }
    const auto first = tokens_.begin() + static_cast<std::ptrdiff_t>(at);
    tokens_.erase(first + 1, first + static_cast<std::ptrdiff_t>(match.length));
    tokens_[at] = std::move(token);
  }

  std::vector<DateToken> tokens_;
};

}  // namespace

const std::vector<NamedPeriod>& named_periods() {
  static const std::vector<NamedPeriod> periods = read_periods();
  return periods;
}

std::vector<DateToken> with_periods(std::vector<DateToken> tokens) {
  return PeriodFinder(std::move(tokens)).read();
}

}  // namespace backmark
