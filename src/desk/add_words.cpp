#include "desk/add_words.h"

#include <algorithm>

#include "base/text.h"
#include "desk/open.h"

namespace backmark::desk {

namespace {

Problem no_such(const std::string& kind,
                const std::string& name,
                const std::vector<std::string>& known) {
  const auto near = closest(name, known);
  return {Fault::not_found, fmt::format("there is no {} \"{}\" in this show", kind, name), kind,
          near ? fmt::format("did you mean \"{}\"?", *near)
               : fmt::format("add it with \"backmark add SHOW {}\"", kind)};
}

}  // namespace

Result<Done> only_words(const Words& words, const std::vector<std::string>& known) {
  for (const auto& [key, text] : words) {
    if (std::find(known.begin(), known.end(), key) == known.end()) {
      const auto near = closest(key, known);
      return Problem{Fault::bad_input, fmt::format("\"{}\" is no word for this", key), "",
                     near ? fmt::format("did you mean \"{}\"?", *near)
                          : "words are: " + join(known, ", ")};
    }
  }
  return Done{};
}

std::string word(const Words& words, const std::string& key) {
  const auto at = words.find(key);
  return at == words.end() ? std::string() : std::string(trim(at->second));
}

Result<std::string> needed(const Words& words, const std::string& key, const std::string& fix) {
  std::string text = word(words, key);
  if (text.empty()) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is missing", key), "", fix};
  }
  return text;
}

Result<const model::Source*> named_source(const model::Show& show, const std::string& key) {
  if (const model::Source* source = show.source(key)) {
    return source;
  }
  std::vector<std::string> known;
  for (const model::Source& source : show.all<model::Source>()) {
    known.push_back(source.key);
  }
  return no_such("source", key, known);
}

Result<const model::Character*> named_character(const model::Show& show,
                                                const std::string& name) {
  if (const model::Character* one = character_called(show, name)) {
    return one;
  }
  std::vector<std::string> known;
  for (const model::Character& one : show.all<model::Character>()) {
    known.push_back(one.key);
  }
  return no_such("character", name, known);
}

Result<const model::Maker*> named_maker(const model::Show& show, const std::string& name) {
  std::vector<std::string> known;
  for (const model::Maker& one : show.all<model::Maker>()) {
    if (lower_ascii(one.key) == lower_ascii(name) ||
        lower_ascii(one.name) == lower_ascii(name)) {
      return &one;
    }
    known.push_back(one.name);
  }
  return no_such("maker", name, known);
}

}  // namespace backmark::desk
