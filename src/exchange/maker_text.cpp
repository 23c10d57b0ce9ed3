#include "exchange/maker_text.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "reference/qualifier.h"

namespace backmark::exchange {

namespace {

struct Phrase {
  std::string_view written;
  std::string_view kept;
};

// What stands before a name, longest first where one begins another. "By" alone says nothing.
const std::vector<Phrase>& before_name() {
  static const std::vector<Phrase> list = [] {
    std::vector<Phrase> phrases{{"by", ""}};
    for (const reference::Qualifier& one : reference::qualifiers()) {
      phrases.push_back({one.phrase, one.phrase});
      for (const std::string& written : one.before) {
        phrases.push_back({written, one.phrase});
      }
    }
    std::stable_sort(phrases.begin(), phrases.end(), [](const Phrase& a, const Phrase& b) {
      return a.written.size() > b.written.size();
    });
    return phrases;
  }();
  return list;
}

const std::vector<Phrase>& after_name() {
  static const std::vector<Phrase> list = [] {
    std::vector<Phrase> phrases;
    for (const reference::Qualifier& one : reference::qualifiers()) {
      for (const std::string& written : one.after) {
        phrases.push_back({written, one.phrase});
      }
    }
    return phrases;
  }();
  return list;
}

constexpr std::array<std::string_view, 8> nobody{
    "unknown maker", "unknown artist", "unidentified maker", "unidentified artist",
    "unknown",       "unidentified",   "anonymous",          "undetermined"};

// Whether `text` begins with the words of `prefix`, not just its letters.
bool begins_with_words(std::string_view text, std::string_view prefix) {
  return starts_with(lower_ascii(text.substr(0, prefix.size())), prefix) &&
         (text.size() == prefix.size() || text[prefix.size()] == ' ' ||
          text[prefix.size()] == ',' || text[prefix.size()] == ':');
}

std::string_view without_punctuation(std::string_view text) {
  text = trim(text);
  while (!text.empty() && (text.front() == ',' || text.front() == ':' || text.front() == ';')) {
    text = trim(text.substr(1));
  }
  return text;
}

std::string_view take_before(std::string_view& text) {
  for (const auto& [written, kept] : before_name()) {
    // A name that is only the phrase is a name.
    if (begins_with_words(text, written) && text.size() > written.size() + 1) {
      text = without_punctuation(text.substr(written.size()));
      return kept;
    }
  }
  return {};
}

std::string_view take_after(std::string_view& text) {
  const std::string lower = lower_ascii(text);
  for (const auto& [written, kept] : after_name()) {
    if (ends_with(lower, written) && text.size() > written.size()) {
      text = trim(text.substr(0, text.size() - written.size()));
      return kept;
    }
  }
  return {};
}

// The place after "unknown", if the text names nobody; false if it names someone.
bool take_nobody(std::string_view text, std::string& place) {
  for (const std::string_view word : nobody) {
    if (begins_with_words(text, word)) {
      place = std::string(without_punctuation(text.substr(word.size())));
      if (starts_with(place, "(") && ends_with(place, ")")) {
        place = place.substr(1, place.size() - 2);
      }
      return true;
    }
  }
  return false;
}

NamedMaker read_one(std::string_view text, std::string_view outer) {
  NamedMaker maker{.qualifier = std::string(outer), .text = std::string(trim(text))};
  std::string_view rest = trim(text);
  if (take_nobody(rest, maker.place)) {
    maker.qualifier.clear();
    return maker;
  }
  const std::string_view before = take_before(rest);
  const std::string_view after = take_after(rest);
  if (!before.empty() || !after.empty()) {
    maker.qualifier = std::string(before.empty() ? after : before);
  }
  if (take_nobody(rest, maker.place)) {
    return maker;
  }
  maker.name = std::string(rest);
  return maker;
}

// Only who is believed in himself may be one of several.
bool allows_several(std::string_view phrase) {
  const reference::Qualifier* known = reference::qualifier(phrase);
  return known != nullptr && known->hand == reference::Hand::maker;
}

std::vector<std::string_view> alternatives(std::string_view text) {
  std::vector<std::string_view> names;
  for (const auto part : split(text, " or ")) {
    std::string_view name = trim(part);
    if (ends_with(name, ",")) {
      name = trim(name.substr(0, name.size() - 1));
    }
    if (!name.empty()) {
      names.push_back(name);
    }
  }
  return names;
}

constexpr std::array<std::string_view, 15> firm_endings{
    "inc",  "ltd",   "limited", "co",   "company", "corp", "corporation", "ag",
    "gmbh", "s.p.a", "s.r.l",   "sons", "jr",      "sr",   "llc"};

}  // namespace

namespace {

bool has_letter(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char sign) {
    return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') ||
           static_cast<unsigned char>(sign) > 127;
  });
}

}  // namespace

std::vector<NamedMaker> read_makers(std::string_view cell) {
  std::vector<NamedMaker> makers;
  const std::string_view text = trim(cell);
  if (!has_letter(text)) {
    return makers;  // "", "?", "--": nobody is named
  }
  std::string_view rest = text;
  const std::string_view qualifier = take_before(rest);
  std::string_view undoubted = rest;
  const bool doubted = !take_after(undoubted).empty();
  const auto names = alternatives(rest);
  if (names.size() > 1 && (allows_several(qualifier) || doubted)) {
    for (const std::string_view name : names) {
      makers.push_back(read_one(name, qualifier.empty() ? "possibly by" : qualifier));
    }
    return makers;
  }
  makers.push_back(read_one(text, ""));
  return makers;
}

void apply_role(std::string_view cell, NamedMaker& maker) {
  const std::string role = lower_ascii(trim(cell));
  std::string_view rest = role;
  for (const auto& [written, kept] : before_name()) {
    if (rest == written) {
      maker.qualifier = kept;
      return;
    }
  }
  for (const reference::Qualifier& one : reference::qualifiers()) {
    // "Attributed manufacturer": the first word of the qualifier stands before a role.
    const std::string_view word = split(one.phrase, " ").front();
    if (one.hand == reference::Hand::maker && begins_with_words(rest, word)) {
      maker.qualifier = one.phrase;
      rest = without_punctuation(rest.substr(word.size()));
    }
  }
  if (!rest.empty()) {
    maker.role = std::string(rest);
  }
}

std::string natural_order(std::string_view name) {
  const auto parts = split(name, ",");
  if (parts.size() != 2 || trim(parts[1]).empty()) {
    return std::string(name);
  }
  std::string ending = lower_ascii(trim(parts[1]));
  while (ends_with(ending, ".")) {
    ending.pop_back();
  }
  if (std::find(firm_endings.begin(), firm_endings.end(), ending) != firm_endings.end()) {
    return std::string(name);
  }
  return std::string(trim(parts[1])) + " " + std::string(trim(parts[0]));
}

std::string inverted_order(std::string_view name) {
  const std::size_t space = name.rfind(' ');
  if (space == std::string_view::npos || contains(name, ",")) {
    return std::string(name);
  }
  return std::string(name.substr(space + 1)) + ", " + std::string(name.substr(0, space));
}

}  // namespace backmark::exchange
