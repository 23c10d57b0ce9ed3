#include "exchange/import_map.h"

#include <algorithm>
#include <array>
#include <toml++/toml.h>

#include "base/text.h"

namespace backmark::exchange {

namespace {

template <class Value>
struct Named {
  std::string_view word;
  Value value;
};

constexpr std::array<Named<RowsOf>, 4> rows_words{{{"pieces", RowsOf::pieces},
                                                   {"makers", RowsOf::makers},
                                                   {"sources", RowsOf::sources},
                                                   {"observations", RowsOf::observations}}};

constexpr std::array<Named<model::Shape>, 6> shape_words{{{"category", model::Shape::category},
                                                          {"ordered", model::Shape::ordered},
                                                          {"set", model::Shape::set},
                                                          {"words", model::Shape::words},
                                                          {"number", model::Shape::number},
                                                          {"text", model::Shape::text}}};

using Words = std::vector<Named<Target>>;

const Words& words_of(RowsOf rows) {
  static const Words pieces{{"number", Target::number},       {"title", Target::title},
                            {"form", Target::form},           {"maker", Target::maker},
                            {"made", Target::made},           {"made-from", Target::made_from},
                            {"made-to", Target::made_to},     {"mark", Target::mark},
                            {"place", Target::place},         {"acquired", Target::acquired},
                            {"note", Target::note},           {"lot", Target::lot},
                            {"lender", Target::lender},       {"tray", Target::tray},
                            {"character", Target::character}, {"measure", Target::measure},
                            {"ignore", Target::ignore}};
  static const Words makers{
      {"key", Target::key},    {"name", Target::name},    {"inverted", Target::inverted},
      {"kind", Target::kind},  {"place", Target::place},  {"from", Target::from},
      {"to", Target::to},      {"dates", Target::dates},  {"mark", Target::mark},
      {"note", Target::prose}, {"ignore", Target::ignore}};
  static const Words sources{{"key", Target::key},
                             {"title", Target::title},
                             {"kind", Target::kind},
                             {"year", Target::year},
                             {"derives-from", Target::derives_from},
                             {"reliability", Target::reliability},
                             {"citation", Target::citation},
                             {"ignore", Target::ignore}};
  static const Words observations{{"number", Target::number},
                                  {"part", Target::part},
                                  {"character", Target::character},
                                  {"value", Target::value},
                                  {"certainty", Target::certainty},
                                  {"how", Target::how},
                                  {"by", Target::by},
                                  {"ignore", Target::ignore}};
  switch (rows) {
    case RowsOf::makers:
      return makers;
    case RowsOf::sources:
      return sources;
    case RowsOf::observations:
      return observations;
    case RowsOf::pieces:
      break;
  }
  return pieces;
}

template <class List>
std::vector<std::string> all_words(const List& list) {
  std::vector<std::string> words;
  for (const auto& named : list) {
    words.emplace_back(named.word);
  }
  return words;
}

Problem unknown_word(std::string_view what,
                     std::string_view word,
                     const std::vector<std::string>& known) {
  const auto near = closest(word, known);
  return {.fault = Fault::bad_input,
          .what = fmt::format("{} \"{}\" is not known", what, word),
          .where = "",
          .fix = near ? fmt::format("did you mean \"{}\"?", *near)
                      : "known are: " + join(known, ", ")};
}

template <class Value, class List>
Result<Value> find_word(std::string_view what, std::string_view word, const List& list) {
  for (const auto& named : list) {
    if (named.word == word) {
      return named.value;
    }
  }
  return unknown_word(what, word, all_words(list));
}

Problem wrong_type(std::string_view key, std::string_view wanted) {
  return {.fault = Fault::bad_input,
          .what = fmt::format("\"{}\" is not {}", key, wanted),
          .fix = fmt::format("write {} = {}", key,
                             wanted == "a text"          ? "\"...\""
                             : wanted == "true or false" ? "true"
                                                         : "[\"...\", \"...\"]")};
}

Result<std::string> text_of(std::string_view key, const toml::node& node) {
  if (const auto text = node.value_exact<std::string>()) {
    return *text;
  }
  return wrong_type(key, "a text");
}

// A text, or a list of texts.
Result<std::vector<std::string>> texts_of(std::string_view key, const toml::node& node) {
  std::vector<std::string> texts;
  if (const auto text = node.value_exact<std::string>()) {
    texts.push_back(*text);
    return texts;
  }
  if (!node.is_array()) {
    return wrong_type(key, "a list of texts");
  }
  for (const toml::node& item : *node.as_array()) {
    const auto text = item.value_exact<std::string>();
    if (!text) {
      return wrong_type(key, "a list of texts");
    }
    texts.push_back(*text);
  }
  return texts;
}

// Moves a Result into its place; the Problem, if any, comes back.
template <class Value>
std::optional<Problem> put(Result<Value> result, Value& place) {
  if (!result) {
    return result.problem();
  }
  place = std::move(*result);
  return std::nullopt;
}

const std::vector<std::string> units{"mm", "cm", "m", "in", "ft", "g", "kg", "oz", "dwt", "ct"};

std::optional<Problem> put_unit(const toml::node& node, std::string& unit) {
  auto problem = put(text_of("unit", node), unit);
  if (!problem && std::find(units.begin(), units.end(), unit) == units.end()) {
    problem = unknown_word("the unit", unit, units);
  }
  return problem;
}

std::optional<Problem> put_flag(std::string_view key, const toml::node& node, bool& flag) {
  const auto value = node.value_exact<bool>();
  if (!value) {
    return wrong_type(key, "true or false");
  }
  flag = *value;
  return std::nullopt;
}

std::optional<Problem> put_shape(const toml::node& node, ColumnRule& rule) {
  const auto word = text_of("shape", node);
  if (!word) {
    return word.problem();
  }
  const auto shape = find_word<model::Shape>("the shape", *word, shape_words);
  if (!shape) {
    return shape.problem();
  }
  rule.shape = *shape;
  return std::nullopt;
}

std::optional<Problem> put_target(RowsOf rows, std::string_view word, ColumnRule& rule) {
  return put(find_word<Target>("the target", word, words_of(rows)), rule.target);
}

std::optional<Problem> put_member(RowsOf rows,
                                  std::string_view key,
                                  const toml::node& node,
                                  ColumnRule& rule) {
  if (key == "is") {
    const auto word = text_of(key, node);
    return word ? put_target(rows, *word, rule) : word.problem();
  }
  if (rows == RowsOf::pieces && (key == "character" || key == "measure")) {
    rule.target = key == "character" ? Target::character : Target::measure;
    return put(text_of(key, node), rule.key);
  }
  if (key == "split" || key == "order") {
    return put(texts_of(key, node), key == "split" ? rule.split : rule.order);
  }
  if (key == "unit") {
    return put_unit(node, rule.unit);
  }
  if (key == "shape") {
    return put_shape(node, rule);
  }
  if (key == "lower" || key == "inverted") {
    return put_flag(key, node, key == "lower" ? rule.lower : rule.inverted);
  }
  const std::array<Named<std::string*>, 4> texts{{{"label", &rule.label},
                                                  {"part", &rule.part},
                                                  {"roles", &rule.roles},
                                                  {"qualifiers", &rule.qualifiers}}};
  for (const auto& [word, place] : texts) {
    if (word == key) {
      return put(text_of(key, node), *place);
    }
  }
  return unknown_word("the key", key,
                      {"is", "character", "measure", "split", "order", "unit", "shape", "lower",
                       "inverted", "label", "part", "roles", "qualifiers"});
}

std::optional<Problem> read_rule(const toml::node& node, ImportMap& map, ColumnRule rule) {
  if (const auto word = node.value_exact<std::string>()) {
    if (const auto problem = put_target(map.rows, *word, rule)) {
      return problem;
    }
  } else if (const toml::table* table = node.as_table()) {
    for (const auto& [key, member] : *table) {
      if (const auto problem = put_member(map.rows, key.str(), member, rule)) {
        return problem;
      }
    }
  } else {
    return wrong_type(rule.heading, "a text");
  }
  const bool named = rule.target == Target::character || rule.target == Target::measure;
  if (map.rows == RowsOf::pieces && named && rule.key.empty()) {
    return Problem{.what = "it is not said which character or measure this is",
                   .fix =
                       "write { character = \"material\" } or { measure = \"height\", unit = "
                       "\"mm\" }"};
  }
  map.columns.push_back(std::move(rule));
  return std::nullopt;
}

std::optional<Problem> read_column(std::string_view heading,
                                   const toml::node& node,
                                   ImportMap& map) {
  const ColumnRule rule{.heading = std::string(heading)};
  if (!node.is_array()) {
    return read_rule(node, map, rule);
  }
  for (const toml::node& item : *node.as_array()) {
    if (const auto problem = read_rule(item, map, rule)) {
      return problem;
    }
  }
  return std::nullopt;
}

std::optional<Problem> read_decimal(const toml::node& node, ImportMap& map) {
  const auto text = text_of("decimal", node);
  if (!text || (*text != "," && *text != ".")) {
    return Problem{.what = "the decimal mark is neither a comma nor a full stop",
                   .fix = "write decimal = \",\" or decimal = \".\""};
  }
  map.decimal = text->front();
  return std::nullopt;
}

std::optional<Problem> read_option(std::string_view key,
                                   const toml::node& node,
                                   ImportMap& map) {
  if (key == "decimal") {
    return read_decimal(node, map);
  }
  if (key == "form") {
    return put(text_of(key, node), map.form);
  }
  const std::array<Named<std::vector<std::string>*>, 3> lists{
      {{"unknown", &map.unknown}, {"none", &map.none}, {"cannot_tell", &map.cannot_tell}}};
  for (const auto& [word, place] : lists) {
    if (word == key) {
      return put(texts_of(key, node), *place);
    }
  }
  return unknown_word("the option", key, {"unknown", "none", "cannot_tell", "decimal", "form"});
}

template <class Read>
std::optional<Problem> read_part(const toml::node& node,
                                 const std::string& where,
                                 const std::string& inside,
                                 Read&& read) {
  const toml::table* table = node.as_table();
  if (table == nullptr) {
    return Problem{.what = "\"" + inside + "\" is not a table",
                   .where = where,
                   .fix = "write [" + inside + "] on a line of its own"};
  }
  for (const auto& [key, member] : *table) {
    if (auto problem = read(key.str(), member)) {
      problem->where = fmt::format("{}, {} \"{}\"", where,
                                   inside == "columns" ? "column" : "option", key.str());
      return problem;
    }
  }
  return std::nullopt;
}

std::optional<Problem> read_head(std::string_view key, const toml::node& node, ImportMap& map) {
  if (key == "source" || key == "title") {
    return put(text_of(key, node), key == "source" ? map.source : map.title);
  }
  return unknown_word("the word", key, {"rows", "source", "title", "columns", "options"});
}

std::optional<Problem> read_document(const toml::table& document,
                                     const std::string& name,
                                     ImportMap& map) {
  // What the rows are decides which targets there are, so it is read first.
  if (const toml::node* rows = document.get("rows")) {
    const auto word = text_of("rows", *rows);
    auto problem = word ? put(find_word<RowsOf>("rows", *word, rows_words), map.rows)
                        : std::optional<Problem>(word.problem());
    if (problem) {
      problem->where = name;
      return problem;
    }
  }
  for (const auto& [key, node] : document) {
    std::optional<Problem> problem;
    if (key.str() == "columns") {
      problem =
          read_part(node, name, "columns", [&](std::string_view heading, const auto& column) {
            return read_column(heading, column, map);
          });
    } else if (key.str() == "options") {
      problem =
          read_part(node, name, "options", [&](std::string_view option, const auto& value) {
            return read_option(option, value, map);
          });
    } else if (key.str() != "rows") {
      problem = read_head(key.str(), node, map);
      if (problem) {
        problem->where = name;
      }
    }
    if (problem) {
      return problem;
    }
  }
  return std::nullopt;
}

bool has(const ImportMap& map, Target target) {
  return std::any_of(map.columns.begin(), map.columns.end(),
                     [&](const ColumnRule& rule) { return rule.target == target; });
}

std::optional<Problem> check_needs(const ImportMap& map) {
  const auto missing = [](std::string_view word) {
    return Problem{.what = fmt::format("no column is the {}", word),
                   .fix = fmt::format("add a line \"...\" = \"{}\" under [columns]", word)};
  };
  if (map.rows == RowsOf::pieces && !has(map, Target::number)) {
    return missing("number");
  }
  if (map.rows == RowsOf::makers && !has(map, Target::name)) {
    return missing("name");
  }
  if (map.rows == RowsOf::sources && !has(map, Target::key)) {
    return missing("key");
  }
  if (map.rows == RowsOf::observations) {
    for (const auto& [target, word] :
         {std::pair{Target::number, "number"}, std::pair{Target::character, "character"},
          std::pair{Target::value, "value"}}) {
      if (!has(map, target)) {
        return missing(word);
      }
    }
  }
  return std::nullopt;
}

std::string stem(const std::string& name) {
  const std::size_t slash = name.find_last_of("/\\");
  const std::string file = slash == std::string::npos ? name : name.substr(slash + 1);
  return file.substr(0, file.rfind('.'));
}

Result<toml::table> parse(std::string_view text, const std::string& name) {
  try {
    return toml::parse(text);
  } catch (const toml::parse_error& error) {
    std::string what(error.description());
    return Problem{.fault = Fault::bad_input,
                   .what = "the map is not TOML: " + what,
                   .where = fmt::format("{}, line {}", name, error.source().begin.line),
                   .fix = "write each column as \"heading\" = \"target\""};
  }
}

}  // namespace

bool ImportMap::names(std::string_view heading) const {
  return std::any_of(columns.begin(), columns.end(), [&](const ColumnRule& rule) {
    return rule.heading == heading || (!rule.roles.empty() && rule.roles == heading) ||
           (!rule.qualifiers.empty() && rule.qualifiers == heading);
  });
}

Result<ImportMap> read_map(std::string_view text, const std::string& name) {
  if (!is_utf8(text)) {
    return Problem{.fault = Fault::bad_input,
                   .what = "the map is not UTF-8 text",
                   .where = name,
                   .fix = "save it as plain text in UTF-8"};
  }
  const auto document = parse(text, name);
  if (!document) {
    return document.problem();
  }
  ImportMap map;
  map.text = std::string(text);
  if (auto problem = read_document(*document, name, map)) {
    return *problem;
  }
  if (auto problem = check_needs(map)) {
    problem->where = name;
    return *problem;
  }
  if (map.source.empty()) {
    map.source = stem(name);
  }
  if (map.title.empty()) {
    map.title = "Spreadsheet " + map.source;
  }
  return map;
}

}  // namespace backmark::exchange
