#include "base/edtf_parts.h"

#include <algorithm>

#include "base/text.h"

namespace backmark {

namespace {

constexpr int year_digits = 4;
constexpr int most_digits = 18;

Problem bad(std::string what, std::string fix) {
  return {Fault::bad_input, std::move(what), "", std::move(fix)};
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_mark(char c) {
  return c == '?' || c == '~' || c == '%';
}

std::int64_t power_of_ten(int exponent) {
  std::int64_t power = 1;
  for (int i = 0; i < exponent; ++i) {
    power *= 10;
  }
  return power;
}

void set_marks(DoubtMarks& marks, int first, int last) {
  marks.year = marks.year || first == 0;
  marks.month = marks.month || (first <= 1 && last >= 1);
  marks.day = marks.day || last == 2;
}

class DateReader {
 public:
  explicit DateReader(std::string_view text) : text_(text), rest_(text) {}

  Result<EdtfParts> read() {
    using Step = std::optional<Problem> (DateReader::*)();
    static constexpr Step steps[] = {&DateReader::read_year, &DateReader::read_month,
                                     &DateReader::read_day};
    for (int component = 0; component < 3; ++component) {
      if (component > 0 && !take('-')) {
        break;
      }
      take_mark(component, component, parts_.left_marks);
      if (auto problem = (this->*steps[component])()) {
        return *problem;
      }
      parts_.last_component_marked = take_mark(0, component, parts_.right_marks);
    }
    if (!rest_.empty()) {
      return bad(fmt::format("\"{}\" has \"{}\" left over", text_, rest_),
                 "write 1985, 1985-04, 1985-04-12, 195X or 1950~");
    }
    return parts_;
  }

 private:
  bool take(char c) {
    if (rest_.empty() || rest_.front() != c) {
      return false;
    }
    rest_.remove_prefix(1);
    return true;
  }

  // A mark at this place covers the components `first` to `last`; `count` counts it.
  bool take_mark(int first, int last, int& count) {
    if (rest_.empty() || !is_mark(rest_.front())) {
      return false;
    }
    const char mark = rest_.front();
    rest_.remove_prefix(1);
    if (mark != '~') {
      set_marks(parts_.uncertain, first, last);
    }
    if (mark != '?') {
      set_marks(parts_.approximate, first, last);
    }
    ++count;
    return true;
  }

  // Up to `most` digits or X.
  std::string take_digits(std::size_t most, bool masks) {
    std::size_t count = 0;
    while (count < rest_.size() && count < most &&
           (is_digit(rest_[count]) || (masks && rest_[count] == 'X'))) {
      ++count;
    }
    std::string digits(rest_.substr(0, count));
    rest_.remove_prefix(count);
    return digits;
  }

  std::optional<Problem> read_year() {
    if (take('Y')) {
      return read_long_year();
    }
    parts_.year.negative = take('-');
    parts_.year.digits = take_digits(year_digits, true);
    if (parts_.year.digits.size() < year_digits) {
      return bad(fmt::format("\"{}\" does not start with a year of four digits", text_),
                 "write the year with four digits, as 1985 or 0985");
    }
    if (!rest_.empty() && is_digit(rest_.front())) {
      return bad(fmt::format("\"{}\" runs its digits together", text_),
                 "put hyphens in, as 1985-04-12, or Y before a year of more than four digits");
    }
    if (parts_.year.negative && parts_.year.digits == "0000") {
      return bad("there is no year minus zero", "write 0000 for 1 BCE");
    }
    parts_.level = parts_.year.negative ? 1 : 0;
    if (take('S')) {
      return read_significant(parts_.year.completed(0), year_digits);
    }
    return std::nullopt;
  }

  std::optional<Problem> read_long_year() {
    const bool negative = take('-');
    const std::string digits = take_digits(most_digits, false);
    if (digits.empty() || digits.front() == '0') {
      return bad(fmt::format("\"{}\": Y is followed by a year without leading zeros", text_),
                 "write Y170000002 or Y-17E7");
    }
    std::int64_t value = to_whole(digits).value_or(0);
    int width = static_cast<int>(digits.size());
    parts_.level = 1;
    if (take('E')) {
      parts_.level = 2;
      const int zeros = static_cast<int>(to_whole(take_digits(2, false)).value_or(0));
      if (zeros == 0 || width + zeros > most_digits) {
        return bad(
            fmt::format("\"{}\" lacks its exponent, or is a year of over eighteen digits",
                        text_),
            "write Y-17E7 for the year minus 170000000");
      }
      value *= power_of_ten(zeros);
      width += zeros;
    } else if (width <= year_digits) {
      return bad(fmt::format("\"{}\": Y is for years of more than four digits", text_),
                 fmt::format("write {}{:04}", negative ? "-" : "", value));
    }
    value = negative ? -value : value;
    parts_.reckoned = YearRange{value, value};
    return take('S') ? read_significant(value, width) : std::nullopt;
  }

  // Keeps the first digits of a year of `width` digits, as many as follow; the others may be
  // any.
  std::optional<Problem> read_significant(std::int64_t year, int width) {
    const int count = static_cast<int>(to_whole(take_digits(2, false)).value_or(0));
    if (count < 1 || count > width || parts_.year.unspecified() > 0) {
      return bad(
          fmt::format("\"{}\": S is followed by how many of the year's digits count", text_),
          "write 1950S2 for some year 1900 to 1999");
    }
    const std::int64_t unit = power_of_ten(width - count);
    const std::int64_t size = year < 0 ? -year : year;
    const std::int64_t low = size / unit * unit;
    const std::int64_t high = low + unit - 1;
    parts_.level = 2;
    parts_.reckoned =
        parts_.year.negative || year < 0 ? YearRange{-high, -low} : YearRange{low, high};
    return std::nullopt;
  }

  std::optional<Problem> read_month() { return read_two(parts_.month, "month"); }
  std::optional<Problem> read_day() { return read_two(parts_.day, "day"); }

  std::optional<Problem> read_two(std::optional<Mask>& component, std::string_view name) {
    if (parts_.reckoned) {
      return bad(fmt::format("\"{}\": a year with Y, E or S takes no month or day", text_),
                 "leave the month out");
    }
    if (!rest_.empty() && is_mark(rest_.front())) {
      return bad(fmt::format("\"{}\" has two marks at one place", text_),
                 "write % for uncertain and approximate together");
    }
    Mask mask{false, take_digits(2, true)};
    if (mask.digits.size() < 2) {
      return bad(fmt::format("\"{}\": the {} must have two digits", text_, name),
                 "write 1985-04-12");
    }
    component = std::move(mask);
    return std::nullopt;
  }

  std::string_view text_;
  std::string_view rest_;
  EdtfParts parts_;
};

}  // namespace

int Mask::unspecified() const {
  return static_cast<int>(std::count(digits.begin(), digits.end(), 'X'));
}

int Mask::completions() const {
  int count = 1;
  for (int i = unspecified(); i > 0; --i) {
    count *= 10;
  }
  return count;
}

std::int64_t Mask::completed(int index) const {
  int fill = negative ? completions() - 1 - index : index;
  std::int64_t value = 0;
  std::int64_t place = 1;
  for (auto digit = digits.rbegin(); digit != digits.rend(); ++digit, place *= 10) {
    value += place * (*digit == 'X' ? fill % 10 : *digit - '0');
    fill = *digit == 'X' ? fill / 10 : fill;
  }
  return negative ? -value : value;
}

std::vector<int> Mask::values(int low, int high) const {
  std::vector<int> found;
  for (int index = 0; index < completions(); ++index) {
    const auto value = static_cast<int>(completed(index));
    if (value >= low && value <= high) {
      found.push_back(value);
    }
  }
  return found;
}

Result<EdtfParts> read_edtf_parts(std::string_view text) {
  return DateReader(text).read();
}

}  // namespace backmark
