#include "reference/term.h"

#include <algorithm>

#include "reference/shipped.h"

namespace backmark::reference {

const std::vector<Term>& terms() {
  static const std::vector<Term> list = [] {
    std::vector<Term> all;
    for (const auto& cells : own_rows("terms.csv")) {
      all.push_back({cells[0], cells[1], cells[2], cells[3], cells[4]});
    }
    return all;
  }();
  return list;
}

const Term* term(std::string_view kind, std::string_view text) {
  const auto& all = terms();
  const auto at = std::find_if(all.begin(), all.end(), [&](const Term& one) {
    return one.kind == kind && one.term == text;
  });
  return at == all.end() ? nullptr : &*at;
}

}  // namespace backmark::reference
