#include "desk/evidence_words.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"

namespace backmark::desk {

namespace {

std::string years_words(double years) {
  return std::lround(years) == 1 ? "1 year" : fmt::format("{:.0f} years", years);
}

// Two figures that matter, never in powers of ten: 0.034, 1.7, 150.
std::string odds_words(double odds) {
  if (odds < 10) {
    return fmt::format("{:.2g}", std::max(odds, 0.001));
  }
  const double step = odds < 100 ? 1 : 10;
  return fmt::format("{:.0f}", step * std::round(odds / step));
}

}  // namespace

std::string moved_words(const model::EvidenceLine& line) {
  if (line.disagrees) {
    return "does not fit; set aside";
  }
  const double narrower = -line.width_change;
  std::string words = narrower >= 1    ? "narrows by " + years_words(narrower)
                      : narrower <= -1 ? "widens by " + years_words(-narrower)
                                       : "moves little";
  if (std::abs(line.years_moved) >= 1) {
    words += fmt::format("; {} {}", years_words(std::abs(line.years_moved)),
                         line.years_moved > 0 ? "later" : "earlier");
  }
  if (line.maker_log_odds >= std::log(1000)) {
    words += "; settles the maker";
  } else if (std::abs(line.maker_log_odds) >= 0.1) {
    words += fmt::format("; maker's odds x {}", odds_words(std::exp(line.maker_log_odds)));
  }
  return words;
}

}  // namespace backmark::desk
