// Whether odds may be trusted, in words.
#include <cmath>

#include "base/text.h"
#include "evidence/calibrate.h"

namespace backmark::evidence {

namespace {

using model::SaidShare;
using model::Trust;

std::string in_twenty(double share) {
  return fmt::format("{:.1f} in 20", 20 * share);
}

// The span that is furthest off in the direction of `trust`.
const SaidShare& worst(const model::YearCalibration& years, Trust trust) {
  const SaidShare* worst = nullptr;
  for (const SaidShare& share : years.coverage) {
    const auto off = [](const SaidShare& of) { return std::abs(of.said - of.seen.share); };
    if (share.trust == trust && (worst == nullptr || off(share) > off(*worst))) {
      worst = &share;
    }
  }
  return worst != nullptr ? *worst : years.coverage[1];
}

std::string too_few(double lots) {
  return fmt::format("Too few to tell: {:.0f} that count for themselves, and {:.0f} are needed",
                     lots, least_lots);
}

}  // namespace

std::string verdict(const model::YearCalibration& years) {
  if (years.trust == Trust::too_few) {
    return too_few(std::floor(years.lots)) + ".";
  }
  if (years.trust == Trust::trusted) {
    const model::SeenShare& seen = years.coverage[1].seen;
    return fmt::format(
        "The years may be trusted: spans hold as often as they say. With {:.0f} lots an error "
        "below {} would not be seen.",
        years.lots, in_twenty((seen.high - seen.low) / 2));
  }
  const SaidShare& off = worst(years, years.trust);
  return fmt::format("The years are too {}: spans said to hold {} held {}.",
                     years.trust == Trust::too_sure ? "sure" : "cautious", in_twenty(off.said),
                     in_twenty(off.seen.share));
}

std::string verdict(const model::MakerCalibration& makers) {
  if (makers.trust == Trust::too_few) {
    return too_few(static_cast<double>(makers.groups)) + " (lots by one maker).";
  }
  const std::string seen = fmt::format("first names said at {} on average were right {}",
                                       in_twenty(makers.said_first), in_twenty(makers.top_1));
  if (makers.trust == Trust::trusted) {
    return fmt::format(
        "The names may be trusted, if the hand is on the list: {}; honest odds would be off as "
        "much {:.0f} times in 100.",
        seen, 100 * makers.chance_of_error);
  }
  return fmt::format(
      "The names are {}: {}.",
      makers.trust == Trust::too_sure ? "too sure" : "off, not too sure on the whole", seen);
}

}  // namespace backmark::evidence
