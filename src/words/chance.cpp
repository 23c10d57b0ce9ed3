#include "words/chance.h"

#include "base/text.h"

namespace backmark::words {

std::string drawn_chance(double p) {
  return p >= 0.995 ? "more than 99 %"
                    : (p <= 0.005 ? "less than 1 %" : fmt::format("{:.0f} %", 100 * p));
}

}  // namespace backmark::words
