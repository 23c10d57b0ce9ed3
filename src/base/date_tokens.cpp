#include "base/date_tokens.h"

#include <array>

#include "base/named_period.h"
#include "base/text.h"

namespace backmark {

namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
         static_cast<unsigned char>(c) > 127;
}

bool is_ordinal_ending(std::string_view text) {
  return text == "st" || text == "nd" || text == "rd" || text == "th";
}

// Dashes to "-", eras without their stops, doubled spaces left as they are.
std::string plain(std::string_view text) {
  std::string out(text);
  for (const char* dash : {"\xE2\x80\x90", "\xE2\x80\x91", "\xE2\x80\x92", "\xE2\x80\x93",
                           "\xE2\x80\x94", "\xE2\x88\x92"}) {
    out = replace_all(out, dash, "-");
  }
  out = replace_all(out, "\xE2\x80\x99", "'");
  out = replace_all(out, "\xC2\xA0", " ");
  static constexpr std::array<std::array<const char*, 2>, 10> eras = {{{"B.C.E.", " BCE"},
                                                                       {"B.C.E", " BCE"},
                                                                       {"B.C.", " BC"},
                                                                       {"B.C", " BC"},
                                                                       {"A.D.", " AD "},
                                                                       {"C.E.", " CE"},
                                                                       {"b.c.", " BC"},
                                                                       {"a.d.", " AD "},
                                                                       {"n.d.", " nd "},
                                                                       {"N.D.", " nd "}}};
  for (const auto& [from, to] : eras) {
    out = replace_all(out, from, to);
  }
  return out;
}

class Lexer {
 public:
  explicit Lexer(std::string text) : text_(std::move(text)) {}

  std::vector<DateToken> read() {
    while (at_ < text_.size()) {
      step();
    }
    return std::move(tokens_);
  }

 private:
  void step() {
    const char c = text_[at_];
    if (is_digit(c)) {
      read_number();
    } else if (is_letter(c)) {
      read_word();
    } else {
      read_sign(c);
      ++at_;
    }
  }

  void read_sign(char c) {
    using enum DateWord;
    const std::string text(1, c);
    switch (c) {
      case '-':
        if (lower_ascii(letters_at(at_ + 1)) != "ish") {
          add({to, 0, 0, text});
        }
        break;
      case '/':
        add({slash, 0, 0, text});
        break;
      case ',':
      case ';':
      case '&':
        add({comma, 0, 0, text});
        break;
      case '(':
      case '[':
        add({open, 0, 0, text});
        break;
      case ')':
      case ']':
        add({close, 0, 0, text});
        break;
      case '?':
        add({doubt, 0, 0, text});
        break;
      case '~':
        add({about, 0, 0, text});
        break;
      case ' ':
      case '.':
      case '\'':
      case '\t':
      case '\n':
      case '\r':
        break;
      default:
        add({other, 0, 0, text});
    }
  }

  // 1950, 1950s, 1880's, 19th, 19C.
  void read_number() {
    const std::size_t start = at_;
    while (at_ < text_.size() && is_digit(text_[at_])) {
      ++at_;
    }
    const int digits = static_cast<int>(at_ - start);
    const auto value = to_whole(std::string_view(text_).substr(start, at_ - start));
    const std::string ending = lower_ascii(letters_at(at_ + (peek() == '\'' ? 1 : 0)));
    DateToken token{DateWord::number, value.value_or(0), digits,
                    text_.substr(start, at_ - start)};
    const bool torn_off =
        digits == 3 && peek() == '?';  // "195?" is a decade or a year cut short
    if (digits > 6 || torn_off || part_of_a_code(start, ending)) {
      token.word = DateWord::other;
    } else if (ending == "s" || is_german_decade(token, ending)) {
      token.word = DateWord::plural;
      at_ += ending.size() + (peek() == '\'' ? 1 : 0);
    } else if (is_ordinal_ending(ending.substr(0, 2))) {
      token.word = DateWord::ordinal;
      at_ += 2;  // "1stBC" has more to come
    }
    add(token);
    if (ending == "c" && digits <= 2) {
      at_ += 1;
      tokens_.back().word = DateWord::ordinal;
      add({DateWord::century, 0, 0, "C"});
    }
  }

  // "A1955", "1955b": no year. "c1955", "1955AD", "1950ish" are.
  bool part_of_a_code(std::size_t start, const std::string& ending) const {
    const bool after_letters = start > 0 && is_letter(text_[start - 1]);
    if (after_letters && !tokens_.empty() && tokens_.back().word == DateWord::other) {
      return true;
    }
    const auto known = date_meaning(ending);
    return !ending.empty() && peek() != '\'' && ending != "s" && ending != "c" &&
           ending != "er" && !is_ordinal_ending(ending.substr(0, 2)) && !known;
  }

  // "1950er Jahre"; from memory.
  static bool is_german_decade(const DateToken& token, const std::string& ending) {
    return ending == "er" && token.digits == 4 && token.value % 10 == 0;
  }

  void read_word() {
    const std::string word = letters_at(at_);
    const std::string lower = lower_ascii(word);
    at_ += word.size();
    if (lower == "no" && lower_ascii(letters_after_spaces()) == "date") {
      at_ = text_.find_first_not_of(' ', at_) + 4;
      add({DateWord::undated, 0, 0, "no date"});
      return;
    }
    // "C1st", "C 4th": a century; "c. 1900", "c 1900": about.
    if (word == "C" && century_follows()) {
      add({DateWord::century, -1, 0, word});
      return;
    }
    if (read_open_end(lower, word) || read_twenties(lower, word)) {
      return;
    }
    const DateMeaning meaning = date_meaning(lower).value_or(DateMeaning{DateWord::other});
    add({meaning.word, meaning.value, 0, word});
  }

  // "1775 or after", "or a little later": the date before it is open. "in or after 1775" and
  // "after or in" speak of the date to come.
  bool read_open_end(const std::string& lower, const std::string& word) {
    const bool later = lower == "later" || lower == "after" || lower == "thereafter";
    const bool earlier = lower == "earlier" || lower == "before";
    const auto is_small = [](const DateToken& token) {
      return token.text == "a" || token.text == "little" || token.text == "slightly";
    };
    std::size_t at = tokens_.size();
    while (at > 0 && is_small(tokens_[at - 1])) {
      --at;
    }
    if (!(later || earlier) || at < 2 || tokens_[at - 1].word != DateWord::either ||
        !ends_a_date(tokens_[at - 2].word)) {
      return false;
    }
    tokens_.resize(at - 1);
    add({later ? DateWord::or_later : DateWord::or_earlier, 0, 0, word});
    return true;
  }

  static bool ends_a_date(DateWord word) {
    using enum DateWord;
    return word == number || word == plural || word == century || word == bce || word == ce;
  }

  // "twenty-third": one ordinal.
  bool read_twenties(const std::string& lower, const std::string& word) {
    if (lower != "twenty" || peek() != '-') {
      return false;
    }
    const std::string unit = letters_at(at_ + 1);
    const auto meaning = date_meaning(lower_ascii(unit));
    if (!meaning || meaning->word != DateWord::ordinal || meaning->value < 1 ||
        meaning->value > 9) {
      return false;
    }
    at_ += 1 + unit.size();
    add({DateWord::ordinal, 20 + meaning->value, 0, word + "-" + unit});
    return true;
  }

  bool century_follows() const {
    std::size_t i = at_;
    while (i < text_.size() && text_[i] == ' ') {
      ++i;
    }
    std::size_t end = i;
    while (end < text_.size() && is_digit(text_[end])) {
      ++end;
    }
    return end > i && end - i <= 2 && end < text_.size() && is_letter(text_[end]);
  }

  std::string letters_at(std::size_t from) const {
    std::size_t end = from;
    while (end < text_.size() && is_letter(text_[end])) {
      ++end;
    }
    return from < text_.size() ? text_.substr(from, end - from) : std::string();
  }
  std::string letters_after_spaces() const {
    const std::size_t start = text_.find_first_not_of(' ', at_);
    return start == std::string::npos ? std::string() : letters_at(start);
  }
  char peek() const { return at_ < text_.size() ? text_[at_] : '\0'; }
  void add(DateToken token) { tokens_.push_back(std::move(token)); }

  std::string text_;
  std::size_t at_ = 0;
  std::vector<DateToken> tokens_;
};

}  // namespace

std::vector<DateToken> date_tokens(std::string_view text) {
  return with_periods(Lexer(plain(text)).read());
}

}  // namespace backmark
