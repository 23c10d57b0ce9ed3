#include "words/prose_check.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <optional>

#include "base/text.h"

namespace backmark::words {

namespace {

constexpr int far_away = 30000;
constexpr int about = 5;  // years either way, as the table's row 5 has it

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0 || (c & 0x80) != 0;
}

// Whether the word or words stand in the text, not within a longer word.
bool has_word(std::string_view text, std::string_view word) {
  for (std::size_t at = text.find(word); at != std::string_view::npos;
       at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    if ((at == 0 || !is_letter(text[at - 1])) &&
        (end == text.size() || !is_letter(text[end]))) {
      return true;
    }
  }
  return false;
}

template <std::size_t n>
bool has_any(std::string_view text, const std::array<std::string_view, n>& words) {
  return std::any_of(words.begin(), words.end(),
                     [text](std::string_view word) { return has_word(text, word); });
}

constexpr std::array<std::string_view, 14> making{
    "made", "makes", "dates from", "dates to", "dated to", "dated",    "struck",
    "cast", "cut",   "work of",    "finished", "begun",    "soldered", "a piece of"};
constexpr std::array<std::string_view, 24> turning{
    "acquired",  "bought", "sold",         "gave",      "given",    "said",
    "says",      "told",   "photographed", "replaced",  "repaired", "restrung",
    "not",       "never",  "if",           "exhibited", "owner",    "owned",
    "published", "born",   "died",         "claims",    "claimed",  "would"};
constexpr std::array<std::string_view, 14> hedging{
    "attributed", "possibly", "perhaps",  "probably", "said", "may",      "might",
    "style",      "circle",   "workshop", "after",    "not",  "formerly", "if"};
constexpr std::array<std::string_view, 8> certainty{
    "certainly",    "undoubtedly", "without doubt",  "no doubt",
    "beyond doubt", "definitely",  "unquestionably", "proven"};

// Four figures standing alone, as a year; nothing if a unit, a sign or more figures touch them.
std::optional<int> year_at(std::string_view text, std::size_t at) {
  if (at + 4 > text.size() ||
      !std::all_of(text.begin() + static_cast<std::ptrdiff_t>(at),
                   text.begin() + static_cast<std::ptrdiff_t>(at) + 4, is_digit)) {
    return std::nullopt;
  }
  if (at > 0 && (is_digit(text[at - 1]) || is_letter(text[at - 1]) || text[at - 1] == '.' ||
                 text[at - 1] == '$')) {
    return std::nullopt;
  }
  const std::string_view after = text.substr(at + 4);
  if (!after.empty() &&
      (is_digit(after[0]) || (after[0] == '.' && after.size() > 1 && is_digit(after[1])))) {
    return std::nullopt;
  }
  for (const std::string_view unit : {" mm", " cm", " g", " pieces", " slides"}) {
    if (starts_with(after, unit) &&
        (after.size() == unit.size() || !is_letter(after[unit.size()]))) {
      return std::nullopt;
    }
  }
  const auto year = static_cast<int>(*to_whole(text.substr(at, 4)));
  return year >= 1000 && year <= 2099 ? std::optional<int>(year) : std::nullopt;
}

// The end of a range that begins with `first`, and how many bytes it takes after the year:
// "-56", "–1956", " to 1956".
struct RangeEnd {
  int last = 0;
  std::size_t size = 0;
};
std::optional<RangeEnd> range_end(std::string_view after, int first) {
  for (const std::string_view dash : {"-", "–", " to "}) {
    if (!starts_with(after, dash)) {
      continue;
    }
    std::size_t end = dash.size();
    while (end < after.size() && is_digit(after[end])) {
      ++end;
    }
    const std::size_t figures = end - dash.size();
    const auto tail = to_whole(after.substr(dash.size(), figures));
    if (tail && (figures == 4 || (figures == 2 && dash != " to "))) {
      const int last =
          figures == 4 ? static_cast<int>(*tail) : first / 100 * 100 + static_cast<int>(*tail);
      if (last >= first) {
        return RangeEnd{last, end};
      }
    }
  }
  return std::nullopt;
}

std::string_view word_before(std::string_view text, std::size_t at) {
  std::string_view before = trim(text.substr(0, at));
  const auto space = before.find_last_of(" (");
  return space == std::string_view::npos ? before : before.substr(space + 1);
}

YearMention mention(std::string_view text, std::size_t at, int first, std::size_t& end) {
  end = at + 4;
  YearMention one{std::string(text.substr(at, 4)), {{first}, {first}}};
  if (end < text.size() && text[end] == 's') {
    ++end;
    one = {std::string(text.substr(at, 5)), {{first}, {first + 9}}};
  } else if (const auto range = range_end(text.substr(end), first)) {
    one = {std::string(text.substr(at, 4 + range->size)), {{first}, {range->last}}};
    end += range->size;
  }
  const std::string before = lower_ascii(word_before(text, at));
  if (before == "about" || before == "around") {
    one.years = {{one.years.first.value - about}, {one.years.last.value + about}};
  } else if (before == "before") {
    one.years = {{-far_away}, {first - 1}};
  } else if (before == "after") {
    one.years = {{one.years.last.value + 1}, {far_away}};
  } else {
    return one;
  }
  one.text = before + " " + one.text;
  return one;
}

// "no. 4", "c. 1950", "J. Lund": a stop that ends no sentence.
bool ends_sentence(std::string_view text, std::size_t at) {
  if (text[at] != '.' && text[at] != '?' && text[at] != '!') {
    return false;
  }
  std::size_t next = at + 1;
  if (next < text.size() && starts_with(text.substr(next), "”")) {
    next += std::string_view("”").size();
  }
  if (next < text.size() && text[next] != ' ' && text[next] != '\n') {
    return false;
  }
  const std::string_view last = word_before(text, at);
  const bool initial = last.size() == 1 && is_letter(last[0]) && last != "I";
  return text[at] != '.' || !(initial || last == "no" || last == "No" || last == "nos" ||
                              last == "Fig" || last == "St" || last == "vol" || last == "pp");
}

double chance(const model::YearBelief& belief, const YearSpan& years) {
  return belief.inside(std::max(years.first, belief.span.first),
                       std::min(years.last, belief.span.last));
}

void check_years(const std::string& sentence,
                 const model::PieceBelief& belief,
                 const model::Phrases& phrases,
                 const std::string& where,
                 Problems& found) {
  if (belief.year.empty() || !belief.dated || phrases.made_row == 0 ||
      !speaks_of_making(sentence)) {
    return;
  }
  for (const YearMention& one : years_in(sentence)) {
    const bool outside =
        one.years.last < belief.year.span.first || one.years.first > belief.year.span.last;
    const double p = outside ? 0 : chance(belief.year, one.years);
    if (p < least_year_chance) {
      found.push_back(
          {Fault::conflict,
           fmt::format("the prose says \"{}\"; the record says {}", one.text, phrases.made),
           where, "change the prose, or record what stands behind its year"});
    }
  }
}

// The maker named after "by", without a word that softens it before the name.
void check_maker(const std::string& sentence,
                 const model::Show& show,
                 const model::Phrases& phrases,
                 const std::string& where,
                 Problems& found) {
  if (phrases.maker_row <= 1) {
    return;
  }
  for (const model::Maker& maker : show.all<model::Maker>()) {
    const std::size_t at = sentence.find("by " + maker.name);
    if (maker.name.empty() || at == std::string::npos ||
        (at > 0 && is_letter(sentence[at - 1])) || !contains(phrases.maker, maker.name) ||
        has_any(lower_ascii(sentence.substr(0, at)), hedging)) {
      continue;
    }
    found.push_back({Fault::conflict,
                     fmt::format("the prose says \"by {}\"; the odds bear \"{}\"", maker.name,
                                 phrases.maker),
                     where, "use the words of the entry, or leave the name out"});
  }
}

constexpr int last_firm_year_row = 2;  // one year, or one of two

void check_certainty(const std::string& sentence,
                     const model::Show& show,
                     const model::Phrases& phrases,
                     const std::string& where,
                     Problems& found) {
  if (!has_any(lower_ascii(sentence), certainty)) {
    return;
  }
  const auto& makers = show.all<model::Maker>();
  const bool names = std::any_of(makers.begin(), makers.end(), [&](const model::Maker& maker) {
    return !maker.name.empty() && contains(sentence, maker.name);
  });
  if (phrases.made_row > last_firm_year_row && speaks_of_making(sentence) &&
      !years_in(sentence).empty()) {
    found.push_back(
        {Fault::conflict,
         fmt::format("the prose is sure of a year; the record says {}", phrases.made), where,
         "say it in the words of the entry"});
  } else if (phrases.maker_row > 1 && names) {
    found.push_back(
        {Fault::conflict,
         fmt::format("the prose is sure of a maker; the record says {}", phrases.maker), where,
         "say it in the words of the entry"});
  }
}

}  // namespace

std::vector<std::string> sentences(std::string_view prose) {
  std::vector<std::string> all;
  std::size_t from = 0;
  for (std::size_t at = 0; at < prose.size(); ++at) {
    const bool paragraph = prose.substr(at, 2) == "\n\n";
    if (paragraph || ends_sentence(prose, at)) {
      const std::string_view one = trim(prose.substr(from, at + 1 - from));
      if (!one.empty()) {
        all.emplace_back(one);
      }
      from = at + 1;
    }
  }
  if (const std::string_view rest = trim(prose.substr(from)); !rest.empty()) {
    all.emplace_back(rest);
  }
  return all;
}

std::vector<YearMention> years_in(std::string_view sentence) {
  std::vector<YearMention> all;
  for (std::size_t at = 0; at < sentence.size();) {
    const auto year = year_at(sentence, at);
    if (!year) {
      ++at;
      continue;
    }
    std::size_t end = 0;
    all.push_back(mention(sentence, at, *year, end));
    at = end;
  }
  return all;
}

bool speaks_of_making(std::string_view sentence) {
  const std::string lower = lower_ascii(sentence);
  return has_any(lower, making) && !has_any(lower, turning);
}

Problems check_prose(std::string_view prose,
                     const model::Show& show,
                     const model::PieceBelief& belief,
                     const model::Phrases& phrases,
                     const std::string& where) {
  Problems found;
  for (const std::string& sentence : sentences(prose)) {
    check_years(sentence, belief, phrases, where, found);
    check_maker(sentence, show, phrases, where, found);
    check_certainty(sentence, show, phrases, where, found);
  }
  return found;
}

}  // namespace backmark::words
