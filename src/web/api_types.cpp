#include "web/api_types.h"

#include "base/text.h"
#include "desk/operations.h"
#include "web/role.h"

namespace backmark::web {

namespace {

using desk::Operation;
using desk::Parameter;
using desk::Takes;

std::string_view type_of(Takes takes) {
  switch (takes) {
    case Takes::flag:
      return "boolean";
    case Takes::number:
    case Takes::whole:
      return "number";
    case Takes::texts:
      return "string[]";
    default:
      return "string";
  }
}

std::string field_of(const Parameter& parameter) {
  return fmt::format("    /** {} */\n    '{}'{}: {};\n", parameter.help, parameter.name,
                     parameter.required ? "" : "?", type_of(parameter.takes));
}

std::string fields_of(const Operation& operation) {
  std::string text;
  for (const Parameter& parameter : operation.parameters) {
    // Files and folders of the machine that serves are not named from afar.
    // The show that is served stands for itself.
    if (parameter.name != "show" && parameter.takes != Takes::file &&
        parameter.takes != Takes::folder) {
      text += field_of(parameter);
    }
  }
  if (operation.writes) {
    text += "    seen?: number;\n    once?: string;\n";
  }
  return text;
}

}  // namespace

std::string api_types() {
  std::string text =
      "// Written by the program from its list of operations; edit that list, not this "
      "file.\n\n"
      "/** What each operation takes: POST /api/NAME. */\nexport interface Asks {\n";
  for (const Operation& operation : desk::operations()) {
    if (needed_for(operation)) {
      const std::string fields = fields_of(operation);
      text += fmt::format("  /** {} */\n  '{}': {}\n", operation.help, operation.name,
                          fields.empty() ? "Record<string, never>;" : "{\n" + fields + "  };");
    }
  }
  return text + "}\n\nexport type OperationName = keyof Asks;\n";
}

}  // namespace backmark::web
