#include "base/maker_dates.h"

#include <algorithm>
#include <map>
#include <vector>

#include "base/text.h"

namespace backmark {

namespace {

enum class Part { unsaid, born, died, active, founded, closed };

const std::map<std::string_view, Part>& keywords() {
  using enum Part;
  static const std::map<std::string_view, Part> table = {
      {"born", born},           {"b", born},
      {"died", died},           {"d", died},
      {"active", active},       {"act", active},
      {"fl", active},           {"flourished", active},
      {"working", active},      {"worked", active},
      {"mentioned", active},    {"documented", active},
      {"founded", founded},     {"est", founded},
      {"established", founded}, {"opened", founded},
      {"closed", closed},       {"dissolved", closed}};
  return table;
}

struct Segment {
  Part part = Part::unsaid;
  std::string text;
};

bool has_digit(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// The text cut at keywords, and at the dash between birth and death.
class Cutter {
 public:
  explicit Cutter(std::string_view text) : text_(text) {}

  std::vector<Segment> read() {
    while (at_ < text_.size()) {
      if (!cut_at_dash() && !cut_at_word()) {
        here().text += text_[at_++];
      }
    }
    return std::move(segments_);
  }

 private:
  Segment& here() { return segments_.back(); }
  void start(Part part) { segments_.push_back({part, ""}); }

  bool cut_at_dash() {
    static const std::vector<std::string_view> dashes = {"-", "\xE2\x80\x93", "\xE2\x80\x94"};
    const std::string_view rest = text_.substr(at_);
    const auto dash = std::find_if(dashes.begin(), dashes.end(), [&](std::string_view sign) {
      return starts_with(rest, sign);
    });
    const bool of_life = here().part == Part::unsaid || here().part == Part::born;
    if (dash == dashes.end() || !of_life || !has_digit(here().text)) {
      return false;
    }
    if (here().part == Part::unsaid) {
      here().part = Part::born;
    }
    at_ += dash->size();
    start(Part::died);
    return true;
  }

  // A keyword is a whole word: "d." but not the d of "and".
  bool cut_at_word() {
    if (at_ > 0 && is_word_byte(text_[at_ - 1])) {
      return false;
    }
    std::size_t end = at_;
    while (end < text_.size() && is_word_byte(text_[end])) {
      ++end;
    }
    const auto found = keywords().find(lower_ascii(text_.substr(at_, end - at_)));
    if (found == keywords().end() || is_of_an_era(end)) {
      return false;
    }
    at_ = end < text_.size() && text_[end] == '.' ? end + 1 : end;
    // "1879 - active 1902": the dash has begun a death that is none.
    if (here().part == Part::died && trim(here().text).empty()) {
      segments_.pop_back();
      here().part = found->second == Part::died ? Part::born : here().part;
      if (found->second == Part::active && here().part == Part::born) {
        here().part = Part::active;
      }
    }
    start(found->second);
    return true;
  }

  // The letters of "B.C." and "A.D." are no keywords.
  bool is_of_an_era(std::size_t end) const {
    const bool stop_before = at_ > 0 && text_[at_ - 1] == '.';
    const bool letter_behind =
        end + 1 < text_.size() && text_[end] == '.' && is_word_byte(text_[end + 1]);
    return end - at_ == 1 && (stop_before || letter_behind);
  }

  static bool is_word_byte(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
           static_cast<unsigned char>(c) > 127;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  std::vector<Segment> segments_{1};
};

// "1885-90": the second year borrows its century.
std::string with_century(std::string text, const YearBounds& born) {
  const std::string_view bare = trim(text);
  if (bare.size() <= 2 && to_whole(bare) && born.latest && born.latest->value >= 1000) {
    return std::to_string(born.latest->value / 100) + (bare.size() == 1 ? "0" : "") +
           std::string(bare);
  }
  return text;
}

YearBounds hull(const YearBounds& a, const YearBounds& b) {
  const auto pick = [](std::optional<Year> x, std::optional<Year> y, bool first) {
    return !x ? y : !y ? x : std::optional<Year>(first ? std::min(*x, *y) : std::max(*x, *y));
  };
  return {pick(a.earliest, b.earliest, true), pick(a.latest, b.latest, false)};
}

class DatesReader {
 public:
  DatesReader(std::string_view text, const DateHabits& habits) : habits_(habits) {
    dates_.text = text;
  }

  MakerDates read() {
    for (const Segment& segment : Cutter(dates_.text).read()) {
      take(segment);
    }
    dates_.understood = has_end(dates_.born) || has_end(dates_.died) || has_end(dates_.active);
    dates_.left_over = join(left_over_, " ");
    return std::move(dates_);
  }

 private:
  static bool has_end(const YearBounds& bounds) { return bounds.earliest || bounds.latest; }

  void take(const Segment& segment) {
    if (!has_digit(segment.text) && segment.part == Part::unsaid) {
      keep(trim(segment.text));
      return;
    }
    const DateReading reading =
        read_date_text(with_century(std::string(trim(segment.text)), dates_.born), habits_);
    keep(reading.left_over);
    dates_.doubtful = dates_.doubtful || reading.doubtful;
    if (!has_end(reading.bounds)) {
      return;
    }
    put(segment.part, reading.bounds);
  }

  void put(Part part, const YearBounds& bounds) {
    switch (part) {
      case Part::born:
        dates_.born = bounds;
        break;
      case Part::died:
        dates_.died = bounds;
        break;
      case Part::founded:
        dates_.active.earliest = bounds.earliest;
        break;
      case Part::closed:
        dates_.active.latest = bounds.latest;
        break;
      default:
        dates_.active = has_end(dates_.active) ? hull(dates_.active, bounds) : bounds;
    }
  }

  void keep(std::string_view words) {
    while (!words.empty() && std::string_view(" ,;:").find(words.back()) != words.npos) {
      words.remove_suffix(1);
    }
    if (!words.empty()) {
      left_over_.emplace_back(words);
    }
  }

  const DateHabits& habits_;
  MakerDates dates_;
  std::vector<std::string> left_over_;
};

constexpr int years_before_work = 20;
constexpr double sd_of_life = 6;

}  // namespace

MakerDates read_maker_dates(std::string_view text, const DateHabits& habits) {
  return DatesReader(text, habits).read();
}

WorkingYears working_years(const MakerDates& dates) {
  WorkingYears years;
  if (dates.active.earliest || dates.active.latest) {
    years.from = dates.active.earliest;
    years.to = dates.active.latest;
    return years;
  }
  const auto& birth = dates.born.earliest;
  years.to = dates.died.latest;
  years.to_sd = years.to ? sd_of_life : years.to_sd;
  if (birth) {
    const Year grown = *birth + years_before_work;
    years.from = years.to ? std::min(grown, *years.to) : grown;
    years.from_sd = sd_of_life;
  }
  return years;
}

}  // namespace backmark
