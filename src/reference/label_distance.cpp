#include "reference/label_distance.h"

#include <algorithm>

#include "base/text.h"
#include "reference/shipped.h"

namespace backmark::reference {

namespace {

constexpr std::string_view file = "label-distances.csv";

LabelDistance distance_of(const std::vector<std::string>& cells) {
  const auto number = [&cells](std::size_t at) { return own_number(file, cells[at]); };
  return {.distance_mm = number(0),
          .section = cells[1] == "section",
          .text_pt = number(2),
          .title_pt = number(3),
          .number_pt = number(4),
          .credit_pt = number(5),
          .label_width_mm = number(6),
          .label_height_mm = number(7),
          .paper_width_mm = number(8),
          .paper_height_mm = number(9),
          .across = static_cast<int>(number(10)),
          .down = static_cast<int>(number(11)),
          .source = cells[12],
          .status = cells[13]};
}

std::vector<LabelDistance> read() {
  std::vector<LabelDistance> list;
  for (const auto& cells : own_rows(file)) {
    list.push_back(distance_of(cells));
  }
  const bool rising = std::is_sorted(
      list.begin(), list.end(),
      [](const auto& a, const auto& b) { return a.distance_mm < b.distance_mm; });
  const auto first_section =
      std::find_if(list.begin(), list.end(), [](const auto& one) { return one.section; });
  if (!rising || first_section == list.begin() || first_section + 1 != list.end()) {
    throw BrokenPromise(
        fmt::format("{} must hold object distances by size and then one for sections", file));
  }
  return list;
}

}  // namespace

const std::vector<LabelDistance>& label_distances() {
  static const std::vector<LabelDistance> list = read();
  return list;
}

}  // namespace backmark::reference
