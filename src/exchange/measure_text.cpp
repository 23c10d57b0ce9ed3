#include "exchange/measure_text.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <optional>

#include "base/text.h"

namespace backmark::exchange {

namespace {

struct Unit {
  std::string_view word;
  double factor;  // to mm or g
  bool weight;
};

constexpr std::array<Unit, 24> units{{{"mm", 1, false},
                                      {"millimetres", 1, false},
                                      {"millimeters", 1, false},
                                      {"cm", 10, false},
                                      {"cms", 10, false},
                                      {"centimetres", 10, false},
                                      {"centimeters", 10, false},
                                      {"m", 1000, false},
                                      {"in", 25.4, false},
                                      {"ins", 25.4, false},
                                      {"inch", 25.4, false},
                                      {"inches", 25.4, false},
                                      {"\"", 25.4, false},
                                      {"ft", 304.8, false},
                                      {"feet", 304.8, false},
                                      {"g", 1, true},
                                      {"gr", 1, true},
                                      {"gm", 1, true},
                                      {"grams", 1, true},
                                      {"kg", 1000, true},
                                      {"oz", 28.349523125, true},
                                      {"ounces", 28.349523125, true},
                                      {"dwt", 1.55517384, true},
                                      {"ct", 0.2, true}}};

struct Label {
  std::string_view word;
  std::string_view key;
};

constexpr std::array<Label, 28> labels{{{"h", "height"},
                                        {"ht", "height"},
                                        {"height", "height"},
                                        {"high", "height"},
                                        {"w", "width"},
                                        {"wd", "width"},
                                        {"width", "width"},
                                        {"wide", "width"},
                                        {"d", "depth"},
                                        {"depth", "depth"},
                                        {"deep", "depth"},
                                        {"l", "length"},
                                        {"length", "length"},
                                        {"long", "length"},
                                        {"lgth", "length"},
                                        {"diam", "diameter"},
                                        {"dia", "diameter"},
                                        {"diameter", "diameter"},
                                        {"\xE2\x8C\x80", "diameter"},
                                        {"\xC3\xB8", "diameter"},
                                        {"th", "thickness"},
                                        {"thick", "thickness"},
                                        {"thickness", "thickness"},
                                        {"wt", "weight"},
                                        {"weight", "weight"},
                                        {"weighs", "weight"},
                                        {"size", ""},
                                        {"overall", ""}}};

enum class Sign { number, unit, label, times, mark, other, end };

struct Token {
  Sign sign = Sign::end;
  std::string text;
  double number = 0;
  const Unit* unit = nullptr;
  std::string_view key;
};

const Unit* find_unit(std::string_view word) {
  const auto* const at = std::find_if(units.begin(), units.end(),
                                      [&](const Unit& unit) { return unit.word == word; });
  return at == units.end() ? nullptr : at;
}

bool is_digit(char character) {
  return character >= '0' && character <= '9';
}

// Reads one part of a cell into signs, and numbers with their fractions.
class Scanner {
 public:
  Scanner(std::string_view text, char decimal, MeasureReading& reading)
      : text_(text), decimal_(decimal), reading_(reading) {}

  std::vector<Token> scan() {
    std::vector<Token> tokens;
    while (at_ < text_.size()) {
      if (Token token = next(); token.sign != Sign::end) {
        tokens.push_back(std::move(token));
      }
    }
    return tokens;
  }

 private:
  Token next() {
    const char here = text_[at_];
    if (is_digit(here) || (here == '.' && at_ + 1 < text_.size() && is_digit(text_[at_ + 1]))) {
      return number();
    }
    if (here == '"' || here == '\'') {
      return marks();
    }
    if (starts_with(text_.substr(at_), "\xC3\x97")) {
      at_ += 2;
      return {.sign = Sign::times, .text = "x"};
    }
    if (here == ' ' || here == '.' || here == ',' || here == ':' || here == '(' ||
        here == ')' || here == '=' || here == '\t') {
      ++at_;
      return {};
    }
    return word();
  }

  Token marks() {
    const bool two = text_[at_] == '"' || starts_with(text_.substr(at_), "''");
    at_ += text_[at_] == '\'' && two ? 2 : 1;
    return two ? Token{.sign = Sign::unit, .text = "\"", .unit = find_unit("in")}
               : Token{.sign = Sign::mark, .text = "'"};
  }

  Token word() {
    const std::size_t begin = at_;
    while (at_ < text_.size() && !is_digit(text_[at_]) &&
           std::string_view(" .,:()=\"'\t").find(text_[at_]) == std::string_view::npos) {
      ++at_;
    }
    Token token{.sign = Sign::other, .text = lower_ascii(text_.substr(begin, at_ - begin))};
    if (token.text == "x" || token.text == "by") {
      token.sign = Sign::times;
    } else if ((token.unit = find_unit(token.text)) != nullptr) {
      token.sign = Sign::unit;
    } else {
      for (const auto& [written, key] : labels) {
        if (written == token.text) {
          token.sign = Sign::label;
          token.key = key;
        }
      }
    }
    return token;
  }

  std::string digits() {
    const std::size_t begin = at_;
    while (at_ < text_.size() && is_digit(text_[at_])) {
      ++at_;
    }
    return std::string(text_.substr(begin, at_ - begin));
  }

  // A comma or full stop with digits on both sides belongs to the number.
  bool mark_inside() const {
    return at_ + 1 < text_.size() && (text_[at_] == ',' || text_[at_] == '.') &&
           is_digit(text_[at_ + 1]);
  }

  Token number() {
    const std::size_t begin = at_;
    std::string plain = digits();
    while (mark_inside()) {
      const char mark = text_[at_++];
      const std::string more = digits();
      (mark == ',' ? reading_.had_comma : reading_.had_point) = true;
      const bool thousand =
          more.size() == 3 && !plain.empty() && plain.size() <= 3 && plain != "0";
      if (mark == decimal_ || (decimal_ == 0 && !thousand) || (decimal_ == 0 && mark == '.')) {
        plain += "." + more;
        break;
      }
      if (!thousand) {
        return give_up(begin);
      }
      reading_.ambiguous = reading_.ambiguous || decimal_ == 0;
      plain += more;
    }
    const auto whole = to_number(plain.empty() || plain[0] == '.' ? "0" + plain : plain);
    if (!whole) {
      return give_up(begin);
    }
    return with_fraction(begin, *whole);
  }

  Token give_up(std::size_t begin) {
    while (at_ < text_.size() && text_[at_] != ' ') {
      ++at_;
    }
    return {.sign = Sign::other, .text = std::string(text_.substr(begin, at_ - begin))};
  }

  // "3/4", "8 3/4", "8-3/4"; and the printed signs for a quarter, a half, three quarters.
  Token with_fraction(std::size_t begin, double value) {
    if (at_ < text_.size() && text_[at_] == '/') {
      if (const auto below = denominator()) {
        return {.sign = Sign::number,
                .text = std::string(text_.substr(begin, at_ - begin)),
                .number = value / *below};
      }
      return give_up(begin);
    }
    const std::size_t kept = at_;
    while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '-')) {
      ++at_;
    }
    const auto fraction = at_ > kept || at_ < text_.size() ? proper_fraction() : std::nullopt;
    if (fraction) {
      value += *fraction;
    } else {
      at_ = kept;
    }
    return {.sign = Sign::number,
            .text = std::string(text_.substr(begin, at_ - begin)),
            .number = value};
  }

  std::optional<double> denominator() {
    ++at_;
    const auto below = to_number(digits());
    return below && *below > 0 ? below : std::nullopt;
  }

  std::optional<double> proper_fraction() {
    for (const auto& [sign, value] : {std::pair{"\xC2\xBC", 0.25}, std::pair{"\xC2\xBD", 0.5},
                                      std::pair{"\xC2\xBE", 0.75}}) {
      if (starts_with(text_.substr(at_), sign)) {
        at_ += 2;
        return value;
      }
    }
    const std::string above = digits();
    if (above.empty() || at_ == text_.size() || text_[at_] != '/') {
      return std::nullopt;
    }
    const auto below = denominator();
    const auto top = to_number(above);
    return below && top && *top < *below ? std::optional(*top / *below) : std::nullopt;
  }

  std::string_view text_;
  char decimal_;
  MeasureReading& reading_;
  std::size_t at_ = 0;
};

struct Size {
  double number = 0;
  std::string key;
  const Unit* unit = nullptr;
};

// Turns signs into sizes: a label before or after a number is the number's, a unit is that of
// every number before it that has none.
struct Group {
  std::vector<Size> sizes;
  std::vector<std::string> words;  // not understood
  std::string waiting;             // a label that stands before its number
  bool quote_marks = false;

  void take(const Token& token, const MeasureHabits& habits) {
    switch (token.sign) {
      case Sign::number:
        sizes.push_back({.number = token.number, .key = waiting});
        waiting.clear();
        break;
      case Sign::label:
        take_label(std::string(token.key));
        break;
      case Sign::unit:
        give_unit(token.unit);
        break;
      case Sign::mark:
        quote_marks = true;
        give_unit(find_unit(habits.unit == "ft" ? "ft" : "in"));
        break;
      case Sign::other:
        words.push_back(token.text);
        break;
      case Sign::times:
      case Sign::end:
        break;
    }
  }

  void take_label(const std::string& key) {
    if (!sizes.empty() && sizes.back().key.empty() && waiting.empty()) {
      sizes.back().key = key;
    } else {
      waiting = key;
    }
  }

  void give_unit(const Unit* unit) {
    for (auto size = sizes.rbegin(); size != sizes.rend() && size->unit == nullptr; ++size) {
      size->unit = unit;
    }
  }
};

// A label that stands before the first number goes with the numbers that follow; one after a
// number must be told from one before the next.
void take_tokens(const std::vector<Token>& tokens, const MeasureHabits& habits, Group& group) {
  const auto first = std::find_if(tokens.begin(), tokens.end(), [](const Token& token) {
    return token.sign == Sign::label || token.sign == Sign::number;
  });
  const bool label_first = first != tokens.end() && first->sign == Sign::label;
  for (const Token& token : tokens) {
    if (token.sign == Sign::label && label_first) {
      group.waiting = token.key;
    } else {
      group.take(token, habits);
    }
  }
}

void name_by_order(Group& group, const MeasureHabits& habits) {
  for (std::size_t i = 0; i < group.sizes.size() && i < habits.order.size(); ++i) {
    Size& size = group.sizes[i];
    if (size.key.empty() && !(size.unit != nullptr && size.unit->weight)) {
      size.key = habits.order[i];
    }
  }
}

const Measure* held(const MeasureReading& reading, std::string_view key) {
  const auto at = std::find_if(reading.measures.begin(), reading.measures.end(),
                               [&](const Measure& measure) { return measure.key == key; });
  return at == reading.measures.end() ? nullptr : &*at;
}

// False if the size stays out: no unit, nothing it could be, or another part's.
bool keep(const Size& size, MeasureReading& reading) {
  if (size.unit == nullptr || size.number <= 0) {
    return false;
  }
  const std::string key = size.unit->weight ? "weight" : size.key;
  const double value = size.number * size.unit->factor;
  if (const Measure* first = held(reading, key)) {
    // The same in another unit, rounded to its own digits.
    return std::abs(first->value - value) <= 0.03 * first->value + 0.5;
  }
  reading.measures.push_back(
      {.key = key, .value = value, .unit = size.unit->weight ? "g" : "mm"});
  return true;
}

std::vector<std::string_view> parts_of(std::string_view cell) {
  std::vector<std::string_view> parts;
  std::size_t begin = 0;
  for (std::size_t i = 0; i <= cell.size(); ++i) {
    if (i == cell.size() || cell[i] == '|' || cell[i] == '\n' || cell[i] == '\r' ||
        cell[i] == ';') {
      if (const auto part = trim(cell.substr(begin, i - begin)); !part.empty()) {
        parts.push_back(part);
      }
      begin = i + 1;
    }
  }
  return parts;
}

// A number that could not be read spoils those beside it: "9 12/ in." is not nine inches.
bool begins_with_digit(const std::string& word) {
  return is_digit(word.front());
}

bool is_about(std::string_view word) {
  return word == "c" || word == "ca" || word == "about" || word == "approx" || word == "and";
}

}  // namespace

MeasureReading read_measures(std::string_view cell, const MeasureHabits& habits) {
  MeasureReading reading;
  std::vector<std::string> left;
  for (const std::string_view part : parts_of(cell)) {
    const auto tokens = Scanner(part, habits.decimal, reading).scan();
    Group group;
    take_tokens(tokens, habits, group);
    if (!habits.unit.empty()) {
      group.give_unit(find_unit(habits.unit));
    }
    name_by_order(group, habits);
    const bool broken = std::any_of(group.words.begin(), group.words.end(), begins_with_digit);
    bool all = !group.sizes.empty() && !broken;
    for (const Size& size : group.sizes) {
      all = !broken && keep(size, reading) && all;
    }
    const bool strange = std::any_of(group.words.begin(), group.words.end(),
                                     [](const std::string& word) { return !is_about(word); });
    if (!all || strange) {
      left.emplace_back(part);
    }
  }
  reading.left_over = join(left, " | ");
  return reading;
}

}  // namespace backmark::exchange
