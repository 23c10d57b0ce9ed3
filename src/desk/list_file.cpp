#include "desk/list_file.h"

#include <algorithm>

#include "base/text.h"

namespace backmark::desk {

std::string_view ListRow::at(std::string_view heading) const {
  const auto found = std::find(headings_.begin(), headings_.end(), heading);
  return found == headings_.end()
             ? std::string_view()
             : trim(cells_[static_cast<std::size_t>(found - headings_.begin())]);
}

Result<exchange::Table> open_list(const Path& path,
                                  const std::vector<std::string>& needed,
                                  const std::string& headings) {
  const auto bytes = read_file(path);
  if (!bytes) {
    return bytes.problem();
  }
  const std::string name = path.filename().string();
  auto table = exchange::read_table(*bytes, name);
  if (!table) {
    return table;
  }
  for (const std::string& heading : needed) {
    const auto& all = table->headings;
    if (std::find(all.begin(), all.end(), heading) == all.end()) {
      return Problem{Fault::bad_input, fmt::format("there is no column \"{}\"", heading),
                     name + ", row 1", "let row 1 be " + headings};
    }
  }
  return table;
}

}  // namespace backmark::desk
