#include "base/edtf.h"

#include <algorithm>
#include <vector>

#include "base/date_text.h"
#include "base/text.h"

namespace backmark {

namespace {

constexpr std::string_view usual_forms =
    "write 1985, 1985-04-12, 195X, 1950~, 1947/1962 or ../1937";

Problem bad(std::string what, std::string_view fix) {
  return {Fault::bad_input, std::move(what), "", std::string(fix)};
}

DoubtMarks both(DoubtMarks a, DoubtMarks b) {
  return {a.year || b.year, a.month || b.month, a.day || b.day};
}

EdtfEnd end_of(const EdtfDate& date) {
  return {EndKind::date, date.uncertain, date.approximate};
}

Edtf from_date(const EdtfDate& date) {
  Edtf edtf;
  edtf.level = date.level;
  edtf.basis = date.basis;
  edtf.earliest = date.earliest;
  edtf.latest = date.latest;
  edtf.start = edtf.end = end_of(date);
  return edtf;
}

// "23:59", two digits each and within their limits.
bool is_clock(std::string_view text, std::vector<int> limits) {
  const auto parts = split(text, ":");
  if (parts.size() != limits.size()) {
    return false;
  }
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto value = to_whole(parts[i]);
    if (parts[i].size() != 2 || parts[i][0] == '-' || !value || *value >= limits[i]) {
      return false;
    }
  }
  return true;
}

bool is_shift(std::string_view text) {
  if (text.empty() || text == "Z") {
    return true;
  }
  if (text[0] != '+' && text[0] != '-') {
    return false;
  }
  text.remove_prefix(1);
  return is_clock(text, {24}) || is_clock(text, {24, 60});
}

Result<Edtf> parse_date_time(std::string_view text) {
  const std::size_t at = text.find('T');
  const auto date = parse_edtf_date(text.substr(0, at));
  if (!date) {
    return date.problem();
  }
  const std::string_view time = text.substr(at + 1);
  const std::size_t clock = std::min<std::size_t>(time.size(), 8);
  const bool understood =
      is_clock(time.substr(0, clock), {24, 60, 60}) && is_shift(time.substr(clock));
  if (!date->whole_day || !understood) {
    return bad(fmt::format("\"{}\" is not a whole day with a time of day", text),
               "write 1985-04-12T23:20:30, with Z or +04:30 after it if the zone is known");
  }
  Edtf edtf = from_date(*date);
  edtf.form = EdtfForm::date_time;
  return edtf;
}

// One end of an interval into the side of `edtf` it bounds.
std::optional<Problem> add_end(std::string_view text, bool start, Edtf& edtf) {
  EdtfEnd& end = start ? edtf.start : edtf.end;
  if (text.empty() || text == "..") {
    end.kind = text.empty() ? EndKind::unknown : EndKind::open;
    edtf.level = std::max(edtf.level, 1);
    return std::nullopt;
  }
  if (contains(text, "T")) {
    return bad(fmt::format("\"{}\": an interval has days, not times, at its ends", text),
               "leave the time out");
  }
  const auto date = parse_edtf_date(text);
  if (!date) {
    return date.problem();
  }
  end = end_of(*date);
  edtf.level = std::max({edtf.level, date->level, date->masked ? 2 : 0});
  edtf.basis = std::max(edtf.basis, date->basis);
  (start ? edtf.earliest : edtf.latest) = start ? date->earliest : date->latest;
  return std::nullopt;
}

Result<Edtf> parse_interval(std::string_view text) {
  const auto ends = split(text, "/");
  if (ends.size() != 2) {
    return bad(fmt::format("\"{}\" has more than one solidus", text), "write 1964/2008");
  }
  Edtf edtf;
  edtf.form = EdtfForm::interval;
  if (auto problem = add_end(ends[0], true, edtf)) {
    return *problem;
  }
  if (auto problem = add_end(ends[1], false, edtf)) {
    return *problem;
  }
  if (!edtf.earliest && !edtf.latest) {
    return bad(fmt::format("\"{}\" names no date at either end", text),
               "leave the cell empty, or write ../1937 or 1947/..");
  }
  if (edtf.earliest && edtf.latest && *edtf.latest < *edtf.earliest) {
    return bad(fmt::format("\"{}\" ends before it starts", text),
               fmt::format("write {}/{}", ends[1], ends[0]));
  }
  return edtf;
}

// Widens `edtf` by a date of a set; `first` when it has none yet.
void widen(Edtf& edtf, const EdtfDate& date, bool first) {
  edtf.earliest = first ? date.earliest : std::min(*edtf.earliest, date.earliest);
  edtf.latest = first ? date.latest : std::max(*edtf.latest, date.latest);
  edtf.start.uncertain = both(edtf.start.uncertain, date.uncertain);
  edtf.start.approximate = both(edtf.start.approximate, date.approximate);
}

struct Range {
  std::string_view from;
  std::string_view to;
  bool open_start = false;
  bool open_end = false;
};

Range member_range(std::string_view member) {
  const std::size_t dots = member.find("..");
  if (dots == std::string_view::npos) {
    return {member, member, false, false};
  }
  Range range{member.substr(0, dots), member.substr(dots + 2), false, false};
  range.open_start = range.from.empty();
  range.open_end = range.to.empty();
  if (range.open_start != range.open_end) {
    (range.open_start ? range.from : range.to) = range.open_start ? range.to : range.from;
  }
  return range;
}

std::optional<Problem> add_member(const Range& range, bool first, Edtf& edtf) {
  const auto from = parse_edtf_date(range.from);
  if (!from) {
    return from.problem();
  }
  const auto to = parse_edtf_date(range.to);
  if (!to) {
    return to.problem();
  }
  if (to->latest < from->earliest) {
    return bad(fmt::format("\"{}..{}\" ends before it starts", range.from, range.to),
               fmt::format("write {}..{}", range.to, range.from));
  }
  widen(edtf, *from, first);
  widen(edtf, *to, false);
  return std::nullopt;
}

Result<Edtf> parse_set(std::string_view text) {
  const char close = text[0] == '[' ? ']' : '}';
  if (text.size() < 2 || text.back() != close) {
    return bad(fmt::format("\"{}\" is a set without its closing bracket", text),
               fmt::format("end it with {}", close));
  }
  Edtf edtf;
  edtf.form = close == ']' ? EdtfForm::one_of : EdtfForm::all_of;
  edtf.level = 2;
  edtf.basis = BoundsBasis::hull;
  const auto members = split(text.substr(1, text.size() - 2), ",");
  for (std::size_t i = 0; i < members.size(); ++i) {
    const Range range = member_range(members[i]);
    if ((range.open_start && i > 0) || (range.open_end && i + 1 < members.size())) {
      return bad(
          fmt::format("\"{}\": two dots without a date stand only at the ends of a set", text),
          "write [..1984] or [1760-12..]");
    }
    if (auto problem = add_member(range, i == 0, edtf)) {
      return *problem;
    }
    edtf.start.kind = range.open_start ? EndKind::open : edtf.start.kind;
    edtf.end.kind = range.open_end ? EndKind::open : edtf.end.kind;
  }
  if (edtf.start.kind == EndKind::open && edtf.end.kind == EndKind::open) {
    return bad(fmt::format("\"{}\" is open on both sides and so bounds nothing", text),
               "leave one side closed, as [..1984]");
  }
  edtf.end.uncertain = edtf.start.uncertain;
  edtf.end.approximate = edtf.start.approximate;
  return edtf;
}

void forget_open_bounds(Edtf& edtf) {
  if (edtf.start.kind != EndKind::date) {
    edtf.earliest.reset();
  }
  if (edtf.end.kind != EndKind::date) {
    edtf.latest.reset();
  }
}

Result<Edtf> parse_any(std::string_view text) {
  if (text.empty()) {
    return bad("the date is empty", usual_forms);
  }
  if (trim(text).size() != text.size()) {
    return bad(fmt::format("\"{}\" has white space around it", text),
               "take the white space away");
  }
  if (contains(text, "/")) {
    return parse_interval(text);
  }
  if (text[0] == '[' || text[0] == '{') {
    return parse_set(text);
  }
  if (contains(text, "T")) {
    return parse_date_time(text);
  }
  const auto date = parse_edtf_date(text);
  if (!date) {
    return date.problem();
  }
  return from_date(*date);
}

std::string bound_text(const Edtf& edtf,
                       const EdtfEnd& end,
                       const std::optional<CalendarDay>& day,
                       std::string_view open) {
  if (edtf.form == EdtfForm::date_time) {
    return edtf.text;
  }
  if (end.kind == EndKind::date) {
    return to_iso(*day);
  }
  return end.kind == EndKind::open ? std::string(open) : "unknown";
}

bool is_lower_letter(char c) {
  return c >= 'a' && c <= 'z';
}

}  // namespace

Result<Edtf> parse_strict_edtf(std::string_view text) {
  auto edtf = parse_any(text);
  if (edtf) {
    edtf->text = text;
    forget_open_bounds(*edtf);
  }
  return edtf;
}

Result<Edtf> parse_edtf(std::string_view text) {
  auto edtf = parse_strict_edtf(text);
  // Words are a habit of catalogues and have a meaning to offer; bare figures may be a slip.
  const bool words = std::any_of(text.begin(), text.end(), is_lower_letter);
  if (edtf || !words) {
    return edtf;
  }
  const DateReading reading = read_date_text(text);
  if (reading.edtf.empty() || !reading.left_over.empty()) {
    return edtf;
  }
  Problem problem = edtf.problem();
  problem.fix = "write " + reading.edtf;
  return problem;
}

std::string earliest_text(const Edtf& edtf) {
  return bound_text(edtf, edtf.start, edtf.earliest, "-inf");
}

std::string latest_text(const Edtf& edtf) {
  return bound_text(edtf, edtf.end, edtf.latest, "+inf");
}

}  // namespace backmark
