#include "desk/references.h"

#include <set>

#include "base/text.h"
#include "exchange/bibliography.h"

namespace backmark::desk {

std::vector<model::Reference> references_in(const std::vector<press::TextFile>& texts,
                                            Problems& faults) {
  std::vector<model::Reference> all;
  std::set<std::string> keys;
  for (const press::TextFile& file : texts) {
    if (!ends_with(file.path, ".json") && !ends_with(file.path, ".bib")) {
      continue;
    }
    auto read = exchange::read_bibliography(file.text, file.path);
    if (!read) {
      faults.push_back(read.problem());
      continue;
    }
    faults.insert(faults.end(), read->faults.begin(), read->faults.end());
    for (model::Reference& one : read->references) {
      if (keys.insert(one.key).second) {
        all.push_back(std::move(one));
      } else {
        faults.push_back({Fault::bad_input,
                          fmt::format("the work \"{}\" is listed in two files", one.key),
                          file.path, "the first is kept; take one of them out"});
      }
    }
  }
  return all;
}

}  // namespace backmark::desk
