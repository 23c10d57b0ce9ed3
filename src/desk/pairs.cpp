#include "desk/pairs.h"

#include "base/text.h"

namespace backmark::desk {

Result<std::map<std::string, std::string>> read_pairs(const std::vector<std::string>& texts) {
  std::map<std::string, std::string> given;
  for (const std::string& text : texts) {
    const std::size_t at = text.find('=');
    if (at == std::string::npos) {
      return Problem{Fault::bad_input, fmt::format("\"{}\" is not key=value", text), "",
                     "write for example distance=600"};
    }
    given[text.substr(0, at)] = text.substr(at + 1);
  }
  return given;
}

}  // namespace backmark::desk
