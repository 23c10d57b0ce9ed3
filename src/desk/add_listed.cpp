#include "base/text.h"
#include "desk/add_words.h"
#include "exchange/import.h"
#include "exchange/import_map.h"
#include "exchange/item.h"

namespace backmark::desk {

namespace {

using exchange::quoted;
using model::Show;

// What is typed by hand is kept as the word of this source.
constexpr const char* by_hand = "by-hand";

// "Oda Vessen" -> "oda_vessen", as an import has it, with a number behind it if another has it.
template <class Has>
std::string key_from(std::string_view name, const Has& has) {
  const std::string key = exchange::to_key(name).empty() ? "unnamed" : exchange::to_key(name);
  std::string tried = key;
  for (int n = 2; has(tried); ++n) {
    tried = fmt::format("{}_{}", key, n);
  }
  return tried;
}

// A record is called by its number or key; makers and sources get a key from their name.
Result<std::string> name_of(const Show& show, const std::string& kind, Words& words) {
  if (kind == "piece") {
    const auto number = needed(words, "number", "write number=\"ES 400\"");
    if (number && show.piece(*number) != nullptr) {
      return Problem{Fault::conflict,
                     fmt::format("there is a piece {} in the show already", *number), "number",
                     "give another number, or note what you see on that one"};
    }
    return number;
  }
  if (kind == "window") {
    return needed(words, "value", "write character=fitting value=\"push button\" from=1964");
  }
  const bool maker = kind == "maker";
  const auto has = [&](const std::string& key) {
    return maker ? show.maker(key) != nullptr : show.source(key) != nullptr;
  };
  if (word(words, "key").empty()) {
    const std::string named = maker ? "name" : "title";
    const auto name = needed(words, named, fmt::format("write {}=\"...\"", named));
    if (!name) {
      return name;
    }
    words["key"] = key_from(*name, has);
  } else if (has(word(words, "key"))) {
    return Problem{Fault::conflict,
                   fmt::format("there is a {} \"{}\" already", kind, word(words, "key")), "key",
                   "give another key"};
  }
  return word(words, "key");
}

// How an import map would have the column: a character of the show, or a word of the map.
std::string rule_for(const Show& show, const std::string& kind, const std::string& key) {
  const auto character =
      kind == "piece" ? named_character(show, key) : Result<const model::Character*>(Problem{});
  if (!character) {
    return quoted(key);
  }
  const model::Character& one = **character;
  const std::string part = one.part ? ", part = " + quoted(show.text(one.part)) : std::string();
  switch (one.shape) {
    case model::Shape::number:
      return fmt::format("{{ measure = {}, unit = {}{} }}", quoted(one.key), quoted(one.unit),
                         part);
    case model::Shape::set:
      return fmt::format("{{ character = {}, split = \";\"{} }}", quoted(one.key), part);
    default:
      return fmt::format("{{ character = {}{} }}", quoted(one.key), part);
  }
}

Problem to_problem(const exchange::CellRemark& fault) {
  return {Fault::bad_input, fault.what, fault.column, fault.fix};
}

}  // namespace

Result<Added> add_listed(const Show& show, const std::string& kind, const Words& given) {
  Words words = given;
  const auto name = name_of(show, kind, words);
  if (!name) {
    return name.problem();
  }
  std::string text = fmt::format("rows = \"{}s\"\nsource = \"{}\"\n[columns]\n", kind, by_hand);
  std::vector<exchange::Cells> records(2);
  for (const auto& [key, value] : words) {
    text += fmt::format("{} = {}\n", quoted(key), rule_for(show, kind, key));
    records[0].push_back(key);
    records[1].emplace_back(trim(value));
  }
  auto map = exchange::read_map(text, "");
  if (!map) {
    Problem problem = map.problem();
    problem.where.clear();
    problem.fix += kind == "piece" ? "; what is not a character of the show yet is begun with "
                                     "\"backmark add SHOW character\""
                                   : "";
    return problem;
  }
  const auto table = exchange::to_table(std::move(records), "");
  if (!table) {
    return table.problem();
  }
  auto outcome = exchange::import_rows(show, *table, *map,
                                       {.file = fmt::format("{} {} by hand", kind, *name)});
  if (!outcome) {
    return outcome.problem();
  }
  if (!outcome->faults.empty()) {
    return to_problem(outcome->faults.front());
  }
  std::string said = fmt::format("The {} \"{}\" is in the show.", kind, *name);
  for (const exchange::CellRemark& note : outcome->notes) {
    said += "\nnote: " + to_line(to_problem(note));
  }
  return Added{std::move(outcome->change), std::move(said)};
}

}  // namespace backmark::desk
