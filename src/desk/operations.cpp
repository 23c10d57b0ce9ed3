#include "desk/operations.h"

namespace backmark::desk {

const std::vector<Operation>& operations() {
  static const std::vector<Operation> list = {};
  return list;
}

}  // namespace backmark::desk
