#include "exchange/measure_sign.h"

#include <array>
#include <optional>

#include "base/text.h"

namespace backmark::exchange {

namespace {

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

}  // namespace

std::vector<Token> scan_measure(std::string_view text, char decimal, MeasureReading& reading) {
  return Scanner(text, decimal, reading).scan();
}

}  // namespace backmark::exchange
