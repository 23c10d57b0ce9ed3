// One line under [columns] of a map.
#include <array>

#include "exchange/cell_values.h"
#include "exchange/map_words.h"
#include "exchange/unit.h"

namespace backmark::exchange {

namespace {

constexpr std::array<Named<model::Shape>, 6> shape_words{{{"category", model::Shape::category},
                                                          {"ordered", model::Shape::ordered},
                                                          {"set", model::Shape::set},
                                                          {"words", model::Shape::words},
                                                          {"number", model::Shape::number},
                                                          {"text", model::Shape::text}}};

std::optional<Problem> put_unit(const toml::node& node, std::string& unit) {
  auto problem = put(text_of("unit", node), unit);
  if (!problem && !holds(map_units(), unit)) {
    problem = unknown_word("the unit", unit, map_units());
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

}  // namespace

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

}  // namespace backmark::exchange
