#include "words/use_phrase.h"

#include "base/text.h"

namespace backmark::words {

namespace {

constexpr int known_within = 2;  // years between the 10 and 90 points

bool known(const model::YearEnd& end) {
  return end.p90 - end.p10 <= known_within;
}

}  // namespace

std::string phrase_use(const model::YearEnd& start, const model::YearEnd& end, YearSpan seen) {
  const bool earlier = start.p10 <= seen.first;
  const bool later = end.p90 >= seen.last;
  std::string text = known(start) && known(end) ? "" : "about ";
  text += std::to_string(start.p50.value);
  text += earlier ? " or earlier" : "";
  if (end.p50 != start.p50) {
    text += fmt::format(" to {}", end.p50.value);
  }
  return text + (later ? " or later" : "");
}

}  // namespace backmark::words
