#include "reference/material.h"

#include "base/text.h"
#include "reference/shipped.h"

namespace backmark::reference {

namespace {

constexpr std::string_view file = "materials.csv";

std::vector<std::string> words(const std::string& cell, std::string_view separator) {
  std::vector<std::string> list;
  for (const auto word : split(cell, separator)) {
    if (!trim(word).empty()) {
      list.emplace_back(trim(word));
    }
  }
  return list;
}

std::optional<double> number_or_none(const std::string& cell) {
  return cell.empty() ? std::nullopt : std::optional(own_number(file, cell));
}

Material material_of(const std::vector<std::string>& cells) {
  const auto number = [&cells](std::size_t at) { return own_number(file, cells[at]); };
  return {.name = cells[0],
          .group = cells[1],
          .density_low = number(2),
          .density_usual = number(3),
          .density_high = number(4),
          .index_low = number_or_none(cells[5]),
          .index_high = number_or_none(cells[6]),
          .birefringence = number_or_none(cells[7]).value_or(0),
          .uv_long = words(cells[8], "/"),
          .uv_short = words(cells[9], "/"),
          .magnet = words(cells[10], "/"),
          .seen = words(cells[11], "|"),
          .porous = cells[12] == "yes",
          .hardness_low = number(13),
          .hardness_high = number(14),
          .source = cells[15],
          .status = cells[16]};
}

}  // namespace

const std::vector<Material>& materials() {
  static const std::vector<Material> list = [] {
    std::vector<Material> all;
    for (const auto& cells : own_rows(file)) {
      all.push_back(material_of(cells));
    }
    return all;
  }();
  return list;
}

const std::vector<FinenessMark>& fineness_marks() {
  static const std::vector<FinenessMark> list = [] {
    std::vector<FinenessMark> all;
    for (const auto& cells : own_rows("fineness-marks.csv")) {
      all.push_back(
          {cells[0], cells[1], own_number("fineness-marks.csv", cells[2]), cells[3], cells[4]});
    }
    return all;
  }();
  return list;
}

}  // namespace backmark::reference
