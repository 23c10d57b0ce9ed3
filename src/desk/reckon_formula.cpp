#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>
#include <optional>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/formulas.h"
#include "desk/pairs.h"

namespace backmark::desk {

namespace {

std::string input_words(const Input& input) {
  return input.name + (input.unit.empty() ? "" : " (" + input.unit + ")");
}

Answer list_all() {
  Answer answer;
  answer.json = Json::array();
  for (const Formula& formula : formulas()) {
    Json inputs = Json::array();
    std::vector<std::string> names;
    for (const Input& input : formula.inputs) {
      inputs.push_back({{"name", input.name},
                        {"unit", input.unit},
                        {"low", input.low},
                        {"high", input.high}});
      names.push_back(input_words(input));
    }
    answer.json.push_back({{"name", formula.name},
                           {"what", formula.what},
                           {"inputs", inputs},
                           {"unit", formula.unit},
                           {"source", formula.source},
                           {"notes", formula.notes}});
    answer.text += fmt::format("{:<20} {}\n{:<20} from {}; {}\n", formula.name, formula.what,
                               "", join(names, ", "), formula.source);
  }
  return answer;
}

Result<const Formula*> find_formula(const std::string& name) {
  std::vector<std::string> names;
  for (const Formula& formula : formulas()) {
    if (formula.name == name) {
      return &formula;
    }
    names.push_back(formula.name);
  }
  const auto near = closest(name, names);
  return Problem{
      Fault::not_found, fmt::format("there is no formula \"{}\"", name), "",
      near ? fmt::format("did you mean \"{}\"?", *near) : "see \"backmark reckon --list\""};
}

std::optional<double> read_value(const Input& input, std::string_view text) {
  if (!input.colour) {
    return to_number(text);
  }
  unsigned rgb = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), rgb, 16);
  const bool six = text.size() == 6 && error == std::errc() && end == text.data() + text.size();
  return six ? std::optional<double>(rgb) : std::nullopt;
}

Result<double> value_of(const Input& input, const std::map<std::string, std::string>& given) {
  const auto at = given.find(input.name);
  if (at == given.end()) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is missing", input.name), "",
                   fmt::format("write {}=...{}", input.name,
                               input.unit.empty() ? "" : ", in " + input.unit)};
  }
  const auto value = read_value(input, at->second);
  if (!value) {
    return Problem{Fault::bad_input,
                   fmt::format("\"{}\" is no value for {}", at->second, input.name), "",
                   input.colour ? "write six hexadecimal digits, for example 1C1B1A"
                                : "write a number with a full stop as decimal mark"};
  }
  if (*value < input.low || *value > input.high) {
    return Problem{Fault::refused,
                   fmt::format("{} = {:g} is outside {:g} to {:g}", input.name, *value,
                               input.low, input.high),
                   "", "the formula is not known to hold there"};
  }
  return *value;
}

Result<Answer> reckon_one(const Formula& formula,
                          const std::map<std::string, std::string>& given) {
  for (const auto& pair : given) {
    const bool known =
        std::any_of(formula.inputs.begin(), formula.inputs.end(),
                    [&](const Input& input) { return input.name == pair.first; });
    if (!known) {
      return Problem{Fault::bad_input,
                     fmt::format("{} takes nothing called \"{}\"", formula.name, pair.first),
                     "", "see \"backmark reckon --list\""};
    }
  }
  std::vector<double> values;
  Json inputs = Json::object();
  for (const Input& input : formula.inputs) {
    const auto value = value_of(input, given);
    if (!value) {
      return value.problem();
    }
    values.push_back(*value);
    inputs[input.name] = given.at(input.name);
  }
  const double value = formula.value(values);
  if (!std::isfinite(value)) {
    return Problem{Fault::refused,
                   fmt::format("{} has no value for these together", formula.name), "",
                   formula.notes.empty() ? "look at what each stands for" : formula.notes};
  }
  Answer answer;
  answer.json = {{"name", formula.name}, {"inputs", inputs},         {"value", value},
                 {"unit", formula.unit}, {"source", formula.source}, {"notes", formula.notes}};
  answer.text =
      fmt::format("{:.6g}{}\n{}\n", value, formula.unit.empty() ? "" : " " + formula.unit,
                  formula.source + (formula.notes.empty() ? "" : "; " + formula.notes));
  return answer;
}

Result<Answer> run(const Call& call, const Surroundings&) {
  if (call.flag("list") || !call.has("name")) {
    return list_all();
  }
  const auto formula = find_formula(call.text("name"));
  if (!formula) {
    return formula.problem();
  }
  const auto given = read_pairs(call.texts("inputs"));
  if (!given) {
    return given.problem();
  }
  return reckon_one(**formula, *given);
}

}  // namespace

Operation reckon_formula() {
  return {.name = "reckon",
          .help = "any formula the program uses, by name",
          .parameters = {{.name = "name", .help = "the formula", .positional = true},
                         {.name = "inputs",
                          .takes = Takes::texts,
                          .help = "key=value",
                          .positional = true},
                         {.name = "list",
                          .takes = Takes::flag,
                          .help = "all formulas: inputs, units, limits, source"}},
          .run = run};
}

}  // namespace backmark::desk
