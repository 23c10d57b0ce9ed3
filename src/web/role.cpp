#include "web/role.h"

namespace backmark::web {

std::string_view name_of(Role role) {
  return role == Role::look ? "look" : role == Role::record ? "record" : "curate";
}

std::optional<Role> role_named(std::string_view name) {
  for (const Role role : {Role::look, Role::record, Role::curate}) {
    if (name_of(role) == name) {
      return role;
    }
  }
  return std::nullopt;
}

std::optional<Role> needed_for(const desk::Operation& operation) {
  if (operation.name == "new" || operation.name == "demo") {
    return std::nullopt;
  }
  if (operation.writes) {
    return operation.recording ? Role::record : Role::curate;
  }
  // These leave the records alone and fill the disk or keep a processor busy for long.
  const bool heavy =
      operation.name == "print" || operation.name == "export" || operation.name == "calibrate";
  return heavy ? Role::record : Role::look;
}

}  // namespace backmark::web
