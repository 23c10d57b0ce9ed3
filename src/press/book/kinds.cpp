#include "press/book/kinds.h"

namespace backmark::press::book {

const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all{
      {"title", lay_title},
      {"colophon", lay_colophon},
  };
  return all;
}

}  // namespace backmark::press::book
