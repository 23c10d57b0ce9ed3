#include "evidence/number_fifths.h"

#include <algorithm>

#include "base/text.h"

namespace backmark::evidence {

std::vector<Fifth> in_fifths(std::vector<Measured> numbers) {
  constexpr std::size_t least = 10;
  constexpr std::size_t classes = 5;
  std::vector<Fifth> fifths;
  if (numbers.size() < least) {
    return fifths;
  }
  std::sort(numbers.begin(), numbers.end());
  std::size_t at = 0;
  for (std::size_t c = 1; c <= classes && at < numbers.size(); ++c) {
    std::size_t end = std::max(at + 1, c * numbers.size() / classes);
    while (end < numbers.size() && numbers[end].first == numbers[end - 1].first) {
      ++end;
    }
    Fifth fifth{numbers[at].first, numbers[end - 1].first, {}};
    for (; at < end; ++at) {
      fifth.pieces.push_back(numbers[at].second);
    }
    std::sort(fifth.pieces.begin(), fifth.pieces.end());
    fifth.pieces.erase(std::unique(fifth.pieces.begin(), fifth.pieces.end()),
                       fifth.pieces.end());
    fifths.push_back(std::move(fifth));
  }
  return fifths;
}

std::string words_for(const Fifth& fifth, std::string_view unit) {
  const std::string range = fifth.least == fifth.most
                                ? fmt::format("{:g}", fifth.least)
                                : fmt::format("{:g} to {:g}", fifth.least, fifth.most);
  return unit.empty() ? range : fmt::format("{} {}", range, unit);
}

}  // namespace backmark::evidence
