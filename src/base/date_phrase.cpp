#include "base/date_phrase.h"

#include "base/date_settle.h"
#include "base/text.h"

namespace backmark {

namespace {

class PhraseReader {
 public:
  explicit PhraseReader(const std::vector<DateToken>& tokens) : tokens_(tokens) {}

  DatePhrases read() {
    for (at_ = 0; at_ < tokens_.size(); ++at_) {
      take(tokens_[at_]);
    }
    if (next_joint_ == Joint::to && !found_.dates.empty()) {
      found_.dates.back().open_end = true;
    }
    settle(found_);
    return std::move(found_);
  }

 private:
  void take(const DateToken& token) {
    using enum DateWord;
    switch (token.word) {
      case number:
        take_number(token);
        break;
      case plural:
        take_plural(token);
        break;
      case ordinal:
        take_ordinal(token);
        break;
      case century:
        take_century(token);
        break;
      case about:
        take_about();
        break;
      case doubt:
        found_.doubtful = true;
        break;
      case early:
      case middle:
      case late:
        take_part(token);
        break;
      case fraction:
        take_fraction(token);
        break;
      case before:
        take_before(token);
        break;
      case after:
        next_.side = DateSide::after;
        next_.with_limit = next_joint_ == Joint::either;  // "in or after"
        break;
      case or_later:
      case or_earlier:
        open_last(token.word);
        break;
      case period:
        add(DateKind::period, token.value, 0);
        found_.dates.back().name = token.text;
        break;
      case bce:
        take_era(DateEra::bce);
        break;
      case ce:
        take_era(DateEra::ce);
        break;
      case month:
        months_.push_back(token.text);
        break;
      case design:
        take_role(DateRole::design);
        break;
      case made:
        take_role(DateRole::made);
        break;
      case altered:
        take_role(DateRole::altered);
        break;
      case undated:
        found_.undated = true;
        break;
      case to:
        take_to();
        break;
      case either:
        next_joint_ = Joint::either;
        break;
      case slash:
        take_slash();
        break;
      case comma:
      case open:
      case close:
        take_break(token);
        break;
      case filler:
        break;
      case other:
        take_unknown(token);
        break;
    }
  }

  // A patent's number ("Patent 191,300") is no year; it goes where the word goes.
  void take_unknown(const DateToken& token) {
    found_.left_over.push_back(token.text);
    const bool numbered = lower_ascii(token.text) == "patent" && next_is(DateWord::number);
    if (!numbered || ahead(1)->digits >= 4) {
      return;
    }
    found_.left_over.push_back(ahead(1)->text);
    ++at_;
    while (next_is(DateWord::comma) && ahead(2) != nullptr && ahead(2)->digits == 3) {
      found_.left_over.back() += "," + ahead(2)->text;
      at_ += 2;
    }
  }

  void take_before(const DateToken& token) {
    next_.side = DateSide::before;
    next_.with_limit = token.value == 1;
  }

  void open_last(DateWord word) {
    if (!found_.dates.empty()) {
      (word == DateWord::or_later ? found_.dates.back().open_end
                                  : found_.dates.back().open_start) = true;
    }
  }

  void take_part(const DateToken& token) {
    (next_.part == DateWord::filler ? next_.part : next_.part_until) = token.word;
  }

  // Between two parts of one century ("mid to late") a dash joins no dates.
  void take_to() {
    if (next_.part == DateWord::filler) {
      next_joint_ = Joint::to;
    }
  }

  const DateToken* ahead(std::size_t step) const {
    return at_ + step < tokens_.size() ? &tokens_[at_ + step] : nullptr;
  }
  bool next_is(DateWord word) const { return ahead(1) != nullptr && ahead(1)->word == word; }

  void add(DateKind kind, long value, int digits) {
    DatePhrase phrase = next_;
    phrase.kind = kind;
    phrase.value = value;
    phrase.digits = digits;
    phrase.joint = found_.dates.empty() ? Joint::none : next_joint_;
    if (phrase.part_of != 0) {
      phrase.part = DateWord::fraction;
    }
    found_.dates.push_back(phrase);
    next_ = {};
    next_joint_ = Joint::comma;
  }

  void take_number(const DateToken& token) {
    // "3/1/1832": month, day, year; "November 20, 1916": a day before a year.
    if (next_is(DateWord::slash) && ahead(2) != nullptr && ahead(2)->digits <= 2 &&
        ahead(3) != nullptr && ahead(3)->word == DateWord::slash && ahead(4) != nullptr &&
        ahead(4)->word == DateWord::number) {
      at_ += 4;
      add(DateKind::year, tokens_[at_].value, tokens_[at_].digits);
      return;
    }
    if (!months_.empty() && token.digits <= 2) {
      months_.clear();
      next_joint_ = found_.dates.empty() ? Joint::none : next_joint_;
      skip_comma();
      return;
    }
    months_.clear();
    if (at_ > 0 && tokens_[at_ - 1].word == DateWord::number && token.digits > 2) {
      next_joint_ = Joint::to;  // "about 1894 1899": the dash was lost
    }
    add(token.digits <= 2 && next_.era == DateEra::unsaid ? DateKind::bare : DateKind::year,
        token.value, token.digits);
  }

  void skip_comma() {
    if (next_is(DateWord::comma)) {
      ++at_;
    }
  }

  // "1950s" a decade; "1800s", "300s" a century, unless a dash or era says otherwise.
  void take_plural(const DateToken& token) {
    if (token.value % 100 == 0) {
      add(DateKind::century, token.value / 100 + 1, token.digits);
    } else {
      add(DateKind::decade, token.value, token.digits);
    }
  }

  void take_ordinal(const DateToken& token) {
    if (next_is(DateWord::fraction) || (ahead(1) != nullptr && ahead(1)->text == "third")) {
      next_.part_number = static_cast<int>(token.value);
      return;
    }
    if (century_ahead_) {
      century_ahead_ = false;
      if (at_ > 1 && tokens_[at_ - 2].word == DateWord::ordinal) {
        next_joint_ = Joint::to;  // "C3rd C1st BC": the dash was lost
      }
      add(DateKind::century, token.value, token.digits);
      return;
    }
    // "19th century" and "19th Century/3RD QUARTER"; "26th Dynasty" is no date.
    if (next_is(DateWord::filler) && ahead(1)->text != "of") {
      found_.left_over.push_back(token.text + " " + ahead(1)->text);
      return;
    }
    add(DateKind::bare, token.value, token.digits);
    found_.dates.back().digits = 0;  // an ordinal is never a year
  }

  void take_century(const DateToken& token) {
    if (token.value == -1) {  // "C1st": the century's number follows
      century_ahead_ = true;
    } else if (!found_.dates.empty() && found_.dates.back().kind == DateKind::bare) {
      found_.dates.back().kind = DateKind::century;
    } else {
      found_.left_over.push_back(token.text);
    }
  }

  void take_about() {
    // "13th c. AD": an ordinal makes it a century. "1000 B.C. circ": said behind the date.
    if (!found_.dates.empty() && is_bare_ordinal(found_.dates.back())) {
      found_.dates.back().kind = DateKind::century;
    } else if (ahead(1) == nullptr && !found_.dates.empty()) {
      found_.dates.back().about = true;
    } else {
      next_.about = true;
    }
  }

  void take_fraction(const DateToken& token) {
    if (next_.part_number == 0) {
      found_.left_over.push_back(token.text);
      return;
    }
    next_.part_of = static_cast<int>(token.value);
    hand_back_part();
  }

  // "20th Century/1ST QUARTER": the part stands behind its century.
  void hand_back_part() {
    const bool last = ahead(1) == nullptr;
    if (last && after_slash_ && !found_.dates.empty()) {
      DatePhrase& date = found_.dates.back();
      date.part = DateWord::fraction;
      date.part_number = next_.part_number;
      date.part_of = next_.part_of;
      next_ = {};
    }
  }

  void take_era(DateEra era) {
    const bool leads = ahead(1) != nullptr && ahead(1)->word == DateWord::number &&
                       (era == DateEra::ce || found_.dates.empty());
    if (leads) {
      next_.era = era;
    } else if (!found_.dates.empty()) {
      if (found_.dates.back().kind == DateKind::bare && found_.dates.back().digits > 0) {
        found_.dates.back().kind = DateKind::year;
      }
      // "C1st BC-AD": the second era is the same number again.
      if (found_.dates.back().era != DateEra::unsaid && next_joint_ == Joint::to) {
        DatePhrase twin = found_.dates.back();
        twin.era = era;
        twin.joint = Joint::to;
        twin.part = next_.part;  // "end C1st BC - beginning AD"
        next_ = {};
        found_.dates.push_back(twin);
        next_joint_ = Joint::comma;
        return;
      }
      found_.dates.back().era = era;
    }
  }

  void take_role(DateRole role) {
    // "1984 (designed)" and "designed 1984": a role in brackets or at the end speaks backwards.
    const bool behind = next_is(DateWord::close) || ahead(1) == nullptr;
    if (behind && !found_.dates.empty() && found_.dates.back().role == DateRole::none) {
      found_.dates.back().role = role;
    } else {
      next_.role = role;
    }
  }

  void take_slash() {
    after_slash_ = true;
    next_joint_ = Joint::either;
    // "19th Century/LATE"
    if (ahead(1) != nullptr && ahead(2) == nullptr && !found_.dates.empty() &&
        (next_is(DateWord::early) || next_is(DateWord::middle) || next_is(DateWord::late))) {
      found_.dates.back().part = ahead(1)->word;
      ++at_;
    }
  }

  void take_break(const DateToken& token) {
    if (token.word == DateWord::close) {
      return;
    }
    if (next_joint_ == Joint::to && !found_.dates.empty()) {
      found_.dates.back().open_end = true;  // "manufactured 1989-, sold ..."
    }
    next_joint_ = Joint::comma;
  }

  const std::vector<DateToken>& tokens_;
  std::size_t at_ = 0;
  DatePhrases found_;
  DatePhrase next_;
  Joint next_joint_ = Joint::none;
  bool after_slash_ = false;
  bool century_ahead_ = false;
  std::vector<std::string> months_;
};

}  // namespace

DatePhrases date_phrases(const std::vector<DateToken>& tokens) {
  return PhraseReader(tokens).read();
}

}  // namespace backmark
