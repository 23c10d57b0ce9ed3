#include "desk/seen_line.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/json.h"
#include "base/text.h"
#include "desk/open.h"

namespace backmark::desk {

namespace {

using model::Character;
using model::Shape;
using model::Show;

// Every word that the show has seen, with the characters it was seen of.
using Vocabulary = std::map<std::string, std::set<const Character*>, std::less<>>;

Vocabulary vocabulary_of(const Show& show) {
  std::set<std::pair<std::int32_t, std::uint32_t>> met;
  Vocabulary words;
  for (const model::Observation& seen : show.all<model::Observation>()) {
    if (seen.seen != model::Seen::value ||
        !met.emplace(seen.character.value, seen.value.value).second) {
      continue;
    }
    const Character* character = show.find(seen.character);
    if (character->shape != Shape::number && character->shape != Shape::text) {
      words[lower_ascii(show.text(seen.value))].insert(character);
    }
  }
  return words;
}

std::vector<std::string> names_of(const Show& show) {
  std::vector<std::string> names;
  for (const Character& one : show.all<Character>()) {
    names.push_back(one.label);
  }
  return names;
}

// Values that the show has not seen of the character, and the nearest it has.
void mark_fresh(Saying& saying, const Vocabulary& words) {
  if (saying.character->shape == Shape::text) {
    return;
  }
  for (const std::string& value : saying.values) {
    const auto known = words.find(lower_ascii(value));
    if (known != words.end() && known->second.contains(saying.character)) {
      continue;
    }
    saying.fresh.push_back(value);
    std::vector<std::string> own;
    for (const auto& [word, characters] : words) {
      if (characters.contains(saying.character)) {
        own.push_back(word);
      }
    }
    if (const auto near = closest(lower_ascii(value), own)) {
      saying.near.push_back(saying.character->label + ": " + *near);
    }
  }
}

// What the character's values say; a word new to the show is taken as it stands.
void read_values(Saying& saying, std::string_view text) {
  const std::string lower = lower_ascii(trim(text));
  if (lower == "none" || lower == "looked for, none") {
    saying.seen = model::Seen::none;
    return;
  }
  if (lower == "cannot tell" || lower == "cannot read") {
    saying.seen = model::Seen::cannot_tell;
    return;
  }
  if (saying.character->shape == Shape::number) {
    const auto parts = split(trim(text), " ");
    const auto number = to_number(parts.front());
    if (!number) {
      saying.trouble =
          fmt::format("{} is a number{}", saying.character->label,
                      saying.character->unit.empty() ? "" : " in " + saying.character->unit);
      return;
    }
    saying.number = *number;
    return;
  }
  if (saying.character->shape == Shape::set) {
    for (const auto part : split(text, ",")) {
      if (!trim(part).empty()) {
        saying.values.emplace_back(trim(part));
      }
    }
  } else if (!trim(text).empty()) {
    saying.values.emplace_back(trim(text));
  }
  if (saying.values.empty()) {
    saying.trouble = "no value is said";
  }
}

void read_bare(Saying& saying, const Vocabulary& words) {
  const auto known = words.find(lower_ascii(saying.text));
  if (known == words.end()) {
    saying.trouble = "not understood";
    std::vector<std::string> all;
    for (const auto& [word, characters] : words) {
      all.push_back(word);
    }
    if (const auto near = closest(saying.text, all)) {
      for (const Character* character : words.find(*near)->second) {
        saying.near.push_back(character->label + ": " + *near);
      }
    }
    return;
  }
  if (known->second.size() > 1) {
    saying.trouble = "said of several things";
    for (const Character* character : known->second) {
      saying.near.push_back(character->label + ": " + saying.text);
    }
    return;
  }
  saying.character = *known->second.begin();
  read_values(saying, saying.text);
}

Saying read_saying(const Show& show, const Vocabulary& words, std::string_view text) {
  Saying saying;
  saying.text = std::string(trim(text));
  const std::size_t colon = saying.text.find_first_of(":=");
  if (colon == std::string::npos) {
    read_bare(saying, words);
    return saying;
  }
  const std::string name(trim(saying.text.substr(0, colon)));
  const std::string value(trim(saying.text.substr(colon + 1)));
  saying.character = character_called(show, name);
  if (saying.character == nullptr) {
    saying.trouble = fmt::format("there is no character \"{}\"", name);
    saying.new_character = true;
    if (const auto near = closest(name, names_of(show))) {
      saying.near.push_back(*near + ": " + value);
    }
    return saying;
  }
  read_values(saying, value);
  if (!saying.trouble.empty()) {
    saying.character = nullptr;
    return saying;
  }
  mark_fresh(saying, words);
  return saying;
}

// Characters that take words, most used first: where a word that nobody knows may belong.
std::vector<std::string> groups_of(const Show& show) {
  std::map<std::int32_t, long> uses;
  for (const model::Observation& seen : show.all<model::Observation>()) {
    ++uses[seen.character.value];
  }
  std::vector<const Character*> list;
  for (const Character& one : show.all<Character>()) {
    if (one.shape != Shape::number && one.shape != Shape::text) {
      list.push_back(&one);
    }
  }
  std::stable_sort(list.begin(), list.end(), [&](const Character* a, const Character* b) {
    return uses[a->id.value] > uses[b->id.value];
  });
  std::vector<std::string> labels;
  for (const Character* one : list) {
    labels.push_back(one->label);
  }
  return labels;
}

std::string value_text(const Saying& saying) {
  switch (saying.seen) {
    case model::Seen::none:
      return "looked for, none";
    case model::Seen::cannot_tell:
      return "cannot tell";
    case model::Seen::value:
      break;
  }
  return saying.character->shape == Shape::number
             ? fmt::format("{:g} {}", saying.number, saying.character->unit)
             : join(saying.values, ", ");
}

}  // namespace

std::vector<Saying> read_line(const Show& show, std::string_view line) {
  const Vocabulary words = vocabulary_of(show);
  std::vector<Saying> sayings;
  for (const auto text : split(line, ";")) {
    if (!trim(text).empty()) {
      sayings.push_back(read_saying(show, words, text));
    }
  }
  return sayings;
}

Json sayings_json(const Show& show, const std::vector<Saying>& sayings) {
  Json list = Json::array();
  for (const Saying& one : sayings) {
    const bool read = one.character != nullptr;
    Json groups = Json::array();
    if (!read && one.text.find_first_of(":=") == std::string::npos) {
      for (const std::string& label : groups_of(show)) {
        groups.push_back(label + ": " + one.text);
      }
    }
    list.push_back({{"text", one.text},
                    {"label", read ? one.character->label : ""},
                    {"value", read ? value_text(one) : ""},
                    {"trouble", one.trouble},
                    {"near", one.near},
                    {"fresh", one.fresh},
                    {"groups", groups},
                    {"new_character", one.new_character}});
  }
  return list;
}

}  // namespace backmark::desk
