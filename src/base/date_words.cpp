#include "base/date_words.h"

#include <array>
#include <map>

#include "base/text.h"

namespace backmark {

namespace {

using Table = std::map<std::string_view, DateMeaning>;

void add(Table& table, DateMeaning meaning, std::initializer_list<std::string_view> words) {
  for (const std::string_view word : words) {
    table.emplace(word, meaning);
  }
}

void add_shape_words(Table& table) {
  using enum DateWord;
  add(table, {about},
      {"c", "ca", "circa", "circ", "about", "approximately", "approx", "around", "ish"});
  // As dealers write in German and French; from memory.
  add(table, {about}, {"um", "vers", "environ"});
  add(table, {doubt}, {"?", "possibly", "probably", "perhaps", "likely"});
  add(table, {early}, {"early", "beginning", "beg", "begin"});
  add(table, {middle}, {"mid", "middle"});
  add(table, {late}, {"late", "end"});
  add(table, {fraction, 2}, {"half"});
  add(table, {fraction, 4}, {"quarter"});
  add(table, {century}, {"century", "centuries", "cent"});
  add(table, {before}, {"before", "pre"});
  add(table, {before, 1}, {"by", "collected"});
  add(table, {after}, {"after", "since", "post"});
  add(table, {bce}, {"bc", "bce"});
  add(table, {ce}, {"ad", "ce"});
}

void add_joining_words(Table& table) {
  using enum DateWord;
  add(table, {to}, {"until", "to"});
  add(table, {either}, {"or"});
  add(table, {comma}, {"and"});
  add(table, {filler},
      {"from", "the", "of", "in", "year", "years", "period", "dynasty", "era", "reign",
       "jahre"});
  add(table, {design}, {"designed", "design", "modeled", "modelled", "introduced", "patented"});
  add(table, {made}, {"manufactured", "made", "cast", "casted", "produced", "executed"});
  add(table, {altered},
      {"repaired", "restored", "altered", "remounted", "reset", "restrung", "replated"});
  add(table, {undated}, {"undated", "unknown", "uncertain", "nd"});
}

void add_months(Table& table) {
  static constexpr std::array<std::string_view, 12> months = {
      "january", "february", "march",     "april",   "may",      "june",
      "july",    "august",   "september", "october", "november", "december"};
  for (std::size_t i = 0; i < months.size(); ++i) {
    const DateMeaning meaning{DateWord::month, static_cast<long>(i + 1)};
    add(table, meaning, {months[i], months[i].substr(0, 3)});
  }
  add(table, {DateWord::month, 9}, {"sept"});
}

void add_ordinals(Table& table) {
  static constexpr std::array<std::string_view, 20> ordinals = {
      "first",     "second",      "third",      "fourth",     "fifth",
      "sixth",     "seventh",     "eighth",     "ninth",      "tenth",
      "eleventh",  "twelfth",     "thirteenth", "fourteenth", "fifteenth",
      "sixteenth", "seventeenth", "eighteenth", "nineteenth", "twentieth"};
  for (std::size_t i = 0; i < ordinals.size(); ++i) {
    add(table, {DateWord::ordinal, static_cast<long>(i + 1)}, {ordinals[i]});
  }
  add(table, {DateWord::ordinal, 30}, {"thirtieth"});
  add(table, {DateWord::ordinal, -1}, {"last"});
}

const Table& meanings() {
  static const Table table = [] {
    Table made;
    add_shape_words(made);
    add_joining_words(made);
    add_months(made);
    add_ordinals(made);
    return made;
  }();
  return table;
}

}  // namespace

std::optional<DateMeaning> date_meaning(std::string_view lower) {
  const auto found = meanings().find(lower);
  if (found != meanings().end()) {
    return found->second;
  }
  if (lower.size() < 4) {
    return std::nullopt;
  }
  // Words of other sense stand one letter from shorter ones ("made", "late"); these do not,
  // with their first letter kept ("nearly").
  static constexpr std::array<std::string_view, 6> long_words = {
      "early", "middle", "century", "quarter", "beginning", "approximately"};
  for (const std::string_view word : long_words) {
    if (lower[0] == word[0] && edit_distance(lower, word) == 1) {
      return meanings().at(word);
    }
  }
  return std::nullopt;
}

}  // namespace backmark
