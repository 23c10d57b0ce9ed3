#include "desk/operation.h"

#include "base/text.h"

namespace backmark::desk {

void Call::set(const std::string& name, std::vector<std::string> values) {
  given_[name] = std::move(values);
}

bool Call::has(const std::string& name) const {
  return given_.contains(name);
}

std::string Call::text(const std::string& name) const {
  const auto at = given_.find(name);
  return at == given_.end() || at->second.empty() ? std::string() : at->second.front();
}

std::vector<std::string> Call::texts(const std::string& name) const {
  const auto at = given_.find(name);
  return at == given_.end() ? std::vector<std::string>() : at->second;
}

Result<double> Call::number(const std::string& name, double fallback) const {
  if (!has(name)) {
    return fallback;
  }
  if (const auto value = to_number(text(name))) {
    return *value;
  }
  return Problem{Fault::bad_input, fmt::format("\"{}\" is not a number", text(name)),
                 "--" + name, "write it with a full stop as decimal mark, for example 12.5"};
}

Result<long> Call::whole(const std::string& name, long fallback) const {
  if (!has(name)) {
    return fallback;
  }
  if (const auto value = to_whole(text(name))) {
    return *value;
  }
  return Problem{Fault::bad_input, fmt::format("\"{}\" is not a whole number", text(name)),
                 "--" + name, "write digits only, for example 310"};
}

}  // namespace backmark::desk
