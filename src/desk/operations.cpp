#include "desk/operations.h"

#include "desk/each.h"

namespace backmark::desk {

const std::vector<Operation>& operations() {
  static const std::vector<Operation> list = {
      new_show(), set_section(), pick_pieces(), infer_show(), explain_piece(), find_pieces(), read_history(), read_dates(),
  };
  return list;
}

}  // namespace backmark::desk
