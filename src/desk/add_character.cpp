#include <algorithm>
#include <array>

#include "base/text.h"
#include "desk/add_words.h"

namespace backmark::desk {

namespace {

using model::Character;
using model::Show;

constexpr std::array<std::string_view, 6> shapes = {"category", "ordered", "set",
                                                    "words",    "number",  "text"};

Result<model::Shape> read_shape(const std::string& text) {
  const auto at = std::find(shapes.begin(), shapes.end(), text.empty() ? "category" : text);
  if (at == shapes.end()) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no shape of a character", text),
                   "shape", "write one of: " + join({shapes.begin(), shapes.end()}, ", ")};
  }
  return static_cast<model::Shape>(at - shapes.begin());
}

bool is_key(std::string_view key) {
  return std::all_of(key.begin(), key.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
  });
}

}  // namespace

Result<Added> add_character(const Show& show, const Words& words) {
  if (auto known = only_words(
          words, {"key", "label", "part", "shape", "unit", "replaceable", "minutes"});
      !known) {
    return known.problem();
  }
  const auto key = needed(words, "key", "write key=cord_type");
  if (!key) {
    return key.problem();
  }
  if (!is_key(*key)) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no key", *key), "key",
                   "write lower case, digits and underscores: cord_type"};
  }
  if (show.character(*key) != nullptr) {
    return Problem{Fault::conflict, fmt::format("there is a character \"{}\" already", *key),
                   "key", "note it on a piece, or give another key"};
  }
  const auto shape = read_shape(word(words, "shape"));
  if (!shape) {
    return shape.problem();
  }
  Added added{model::Change(show, "add", fmt::format("character {}", *key)),
              fmt::format("The character \"{}\" can be noted.", *key)};
  Character character{.key = *key, .label = word(words, "label"), .shape = *shape};
  character.label = character.label.empty() ? *key : character.label;
  character.part = added.change.word(word(words, "part"));
  character.unit = word(words, "unit");
  character.replaceable = word(words, "replaceable") == "yes";
  if (const std::string minutes = word(words, "minutes"); !minutes.empty()) {
    const auto number = to_number(minutes);
    if (!number || *number <= 0 || *number > 10000) {
      return Problem{Fault::bad_input, fmt::format("\"{}\" is no number of minutes", minutes),
                     "minutes", "write 2"};
    }
    character.minutes = *number;
  }
  added.change.add(character);
  return added;
}

Result<Added> add_lineage(const Show& show, const Words& words) {
  if (auto known = only_words(words, {"character", "variants", "maker", "source"}); !known) {
    return known.problem();
  }
  const auto variants = needed(
      words, "variants", "write variants=\"tubes; single loop; two loops\", oldest first");
  const bool of_maker = !word(words, "maker").empty();
  const auto name =
      of_maker ? Result<std::string>(word(words, "character"))
               : needed(words, "character", "write character=fitting, or maker=NAME of a mark");
  if (!variants || !name) {
    return variants ? name.problem() : variants.problem();
  }
  Added added{model::Change(show, "add", fmt::format("lineage {}: {}", *name, *variants)),
              "The lineage is on file."};
  model::Lineage lineage;
  if (!name->empty()) {
    const auto character = named_character(show, *name);
    if (!character) {
      return character.problem();
    }
    lineage.character = (*character)->id;
  }
  for (const auto part : split(*variants, ";")) {
    if (!trim(part).empty()) {
      lineage.variants.push_back(added.change.word(trim(part)));
    }
  }
  if (lineage.variants.size() < 2) {
    return Problem{Fault::bad_input, "an order needs two variants at least", "variants",
                   "write them oldest first, divided by semicolons"};
  }
  if (of_maker) {
    const auto maker = named_maker(show, word(words, "maker"));
    if (!maker) {
      return maker.problem();
    }
    lineage.maker = (*maker)->id;
  }
  if (const std::string key = word(words, "source"); !key.empty()) {
    const auto source = named_source(show, key);
    if (!source) {
      return source.problem();
    }
    lineage.source = (*source)->id;
  }
  added.change.add(lineage);
  return added;
}

}  // namespace backmark::desk
