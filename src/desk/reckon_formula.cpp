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
  const std::string name = input.name + (input.unit.empty() ? "" : " (" + input.unit + ")");
  return input.optional ? "[" + name + "]" : name;
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
                        {"high", input.high},
                        {"optional", input.optional},
                        {"words", input.words}});
      names.push_back(input_words(input));
    }
    answer.json.push_back({{"name", formula.name},
                           {"what", formula.what},
                           {"also", formula.also},
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
    const bool also =
        std::find(formula.also.begin(), formula.also.end(), name) != formula.also.end();
    if (formula.name == name || formula.what == name || also) {
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
  text.remove_prefix(starts_with(text, "#") ? 1 : 0);
  unsigned rgb = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), rgb, 16);
  const bool six = text.size() == 6 && error == std::errc() && end == text.data() + text.size();
  return six ? std::optional<double>(rgb) : std::nullopt;
}

Result<double> value_of(const Input& input, const std::string& text) {
  const auto value = read_value(input, text);
  if (!value) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no value for {}", text, input.name),
                   "",
                   input.colour ? "write six hexadecimal digits, for example 1C1B1A"
                                : "write a number with a full stop as decimal mark"};
  }
  if (!(*value >= input.low && *value <= input.high)) {
    return Problem{Fault::refused,
                   fmt::format("{} = {:g} is outside {:g} to {:g}", input.name, *value,
                               input.low, input.high),
                   "", "the formula is not known to hold there"};
  }
  return *value;
}

Result<std::string> word_of(const Input& input, const std::string& text) {
  const auto words = split(input.words, "|");
  const bool known = input.words == "*"
                         ? !text.empty()
                         : std::find(words.begin(), words.end(), text) != words.end();
  if (!known) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no value for {}", text, input.name),
                   "",
                   input.words == "*" ? fmt::format("write {}=...", input.name)
                                      : "write " + replace_all(input.words, "|", " or ")};
  }
  return text;
}

Result<Done> take(const Input& input, const std::string& text, Given& given) {
  if (!input.words.empty()) {
    const auto word = word_of(input, text);
    if (!word) {
      return word.problem();
    }
    given.put(input.name, *word);
    return Done{};
  }
  const auto value = value_of(input, text);
  if (!value) {
    return value.problem();
  }
  given.put(input.name, *value);
  return Done{};
}

Result<Given> given_for(const Formula& formula,
                        const std::map<std::string, std::string>& texts) {
  Given given;
  for (const Input& input : formula.inputs) {
    const auto at = texts.find(input.name);
    if (at == texts.end() && input.optional) {
      continue;
    }
    if (at == texts.end()) {
      return missing_input(fmt::format("\"{}\" is missing", input.name),
                           fmt::format("write {}=...{}", input.name,
                                       input.unit.empty() ? "" : ", in " + input.unit));
    }
    if (const auto taken = take(input, at->second, given); !taken) {
      return taken.problem();
    }
  }
  return given;
}

Result<Reckoned> value_by(const Formula& formula, const Given& given) {
  if (formula.reckon != nullptr) {
    return formula.reckon(given);
  }
  std::vector<double> values;
  for (const Input& input : formula.inputs) {
    values.push_back(given.number(input.name));
  }
  return Reckoned{formula.value(values)};
}

Answer answer_of(const Formula& formula,
                 const std::map<std::string, std::string>& inputs,
                 const Reckoned& reckoned) {
  const std::string unit = reckoned.unit.empty() ? formula.unit : reckoned.unit;
  std::vector<std::string> notes;
  for (const std::string& note : {formula.notes, reckoned.notes}) {
    if (!note.empty()) {
      notes.push_back(note);
    }
  }
  Answer answer;
  answer.json = {{"name", formula.name},     {"inputs", inputs},
                 {"value", reckoned.value},  {"unit", unit},
                 {"source", formula.source}, {"notes", join(notes, "; ")}};
  const std::string value = reckoned.value.is_string()
                                ? reckoned.value.get<std::string>()
                                : fmt::format("{:.6g}", reckoned.value.get<double>());
  answer.text = fmt::format("{}{}\n{}\n", value, unit.empty() ? "" : " " + unit,
                            formula.source + (notes.empty() ? "" : "; " + join(notes, "; ")));
  return answer;
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
  const auto inputs = given_for(formula, given);
  if (!inputs) {
    return inputs.problem();
  }
  const auto reckoned = value_by(formula, *inputs);
  if (!reckoned) {
    return reckoned.problem();
  }
  if (reckoned->value.is_number() && !std::isfinite(reckoned->value.get<double>())) {
    return Problem{Fault::refused,
                   fmt::format("{} has no value for these together", formula.name), "",
                   formula.notes.empty() ? "look at what each stands for" : formula.notes};
  }
  return answer_of(formula, given, *reckoned);
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
