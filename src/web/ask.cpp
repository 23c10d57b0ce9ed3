#include "web/ask.h"

#include <algorithm>

#include "base/json.h"
#include "base/text.h"
#include "desk/operations.h"

namespace backmark::web {

namespace {

using desk::Operation;
using desk::Parameter;
using desk::Takes;

constexpr int deepest = 8;

Problem bad(std::string what, std::string where, std::string fix) {
  return {Fault::bad_input, std::move(what), std::move(where), std::move(fix)};
}

std::string_view wanted(Takes takes) {
  switch (takes) {
    case Takes::flag:
      return "true or false";
    case Takes::number:
      return "a number";
    case Takes::whole:
      return "a whole number";
    case Takes::texts:
      return "a list of texts";
    default:
      return "a text";
  }
}

Problem wrong_kind(const Parameter& parameter) {
  return bad("this field holds a value of another kind", parameter.name,
             fmt::format("give {}", wanted(parameter.takes)));
}

// Texts and numbers as the operation reads them; nothing for what is neither.
std::optional<std::string> as_text(const Json& value) {
  if (value.is_string()) {
    return value.get<std::string>();
  }
  return value.is_number() ? std::optional(value.dump()) : std::nullopt;
}

Result<Done> set_list(desk::Call& call, const Parameter& parameter, const Json& value) {
  std::vector<std::string> texts;
  for (const Json& item : value.is_array() ? value : Json::array({value})) {
    const auto text = as_text(item);
    if (!text) {
      return wrong_kind(parameter);
    }
    texts.push_back(*text);
  }
  if (!texts.empty()) {
    call.set(parameter.name, std::move(texts));
  }
  return Done{};
}

Result<Done> set_field(desk::Call& call, const Parameter& parameter, const Json& value) {
  if (parameter.takes == Takes::file || parameter.takes == Takes::folder) {
    return Problem{Fault::refused, "files of the machine that serves are not named from afar",
                   parameter.name, "do this at the terminal there"};
  }
  if (value.is_null()) {
    return Done{};
  }
  if (parameter.takes == Takes::flag) {
    if (!value.is_boolean()) {
      return wrong_kind(parameter);
    }
    if (value.get<bool>()) {
      call.set(parameter.name, {});
    }
    return Done{};
  }
  if (parameter.takes == Takes::texts) {
    return set_list(call, parameter, value);
  }
  const auto text = as_text(value);
  const bool numeric = parameter.takes == Takes::number || parameter.takes == Takes::whole;
  if (!text || (numeric && !to_number(*text))) {
    return wrong_kind(parameter);
  }
  call.set(parameter.name, {*text});
  return Done{};
}

const Parameter* parameter_named(const Operation& operation, const std::string& name) {
  for (const Parameter& parameter : operation.parameters) {
    if (parameter.name == name && name != "show") {
      return &parameter;
    }
  }
  return nullptr;
}

Problem unknown_field(const Operation& operation, const std::string& name) {
  std::vector<std::string> fields;
  for (const Parameter& parameter : operation.parameters) {
    if (parameter.name != "show") {
      fields.push_back(parameter.name);
    }
  }
  const auto near = closest(name, fields);
  return bad(fmt::format("\"{}\" is no field of \"{}\"", shortened(name, 60), operation.name),
             "",
             near             ? fmt::format("did you mean \"{}\"?", *near)
             : fields.empty() ? std::string("it takes no fields")
                              : "fields are: " + join(fields, ", "));
}

bool is_name(const std::string& text) {
  return text.size() >= 8 && text.size() <= 64 &&
         text.find_first_not_of(
             "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_") ==
             std::string::npos;
}

// "seen" and "once", which every writer takes.
Result<bool> read_besides(Ask& ask, const std::string& name, const Json& value) {
  if (name == "seen") {
    if (!value.is_number_integer() || value < 0) {
      return bad("this is no place in the book of changes", name,
                 "give the number of the last change you saw");
    }
    ask.seen = value.get<std::int64_t>();
    return true;
  }
  if (name == "once") {
    if (!value.is_string() || !is_name(value.get<std::string>())) {
      return bad("this is no name for a request", name,
                 "give 8 to 64 letters, digits, hyphens or low lines");
    }
    ask.once = value.get<std::string>();
    return true;
  }
  return false;
}

// Nothing if the body is no JSON or nests deeper than any field needs.
Json parsed(const std::string& body) {
  bool too_deep = false;
  const auto look = [&](int depth, Json::parse_event_t, Json&) {
    too_deep = too_deep || depth > deepest;
    return !too_deep;
  };
  Json json = Json::parse(body, look, false);
  return too_deep ? Json() : json;
}

Result<Done> read_fields(const Operation& operation, const Json& json, Ask& ask) {
  for (const auto& [name, value] : json.items()) {
    if (operation.writes) {
      const auto taken = read_besides(ask, name, value);
      if (!taken) {
        return taken.problem();
      }
      if (*taken) {
        continue;
      }
    }
    const Parameter* parameter = parameter_named(operation, name);
    if (parameter == nullptr) {
      return unknown_field(operation, name);
    }
    if (auto set = set_field(ask.call, *parameter, value); !set) {
      return set.problem();
    }
  }
  for (const Parameter& parameter : operation.parameters) {
    if (parameter.required && parameter.name != "show" && !ask.call.has(parameter.name)) {
      return bad("a field is missing", parameter.name,
                 fmt::format("give {}: {}", wanted(parameter.takes), parameter.help));
    }
  }
  return Done{};
}

}  // namespace

Result<const Operation*> operation_named(std::string_view name) {
  std::vector<std::string> names;
  for (const Operation& operation : desk::operations()) {
    if (operation.name == name) {
      return &operation;
    }
    names.push_back(operation.name);
  }
  const auto near = closest(name, names);
  return Problem{Fault::not_found,
                 fmt::format("there is no operation \"{}\"", shortened(std::string(name), 60)),
                 "",
                 near ? fmt::format("did you mean \"{}\"?", *near)
                      : "operations are: " + join(names, ", ")};
}

Result<Ask> read_ask(const Operation& operation, const std::string& body) {
  const Json json = body.empty() ? Json::object() : parsed(body);
  if (!json.is_object()) {
    return bad("the body is no JSON object", "", "send the fields as {\"name\": value}");
  }
  Ask ask;
  ask.text = body;
  if (auto read = read_fields(operation, json, ask); !read) {
    return read.problem();
  }
  return ask;
}

}  // namespace backmark::web
