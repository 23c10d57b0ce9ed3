#include "reference/display.h"

#include "base/text.h"
#include "reference/shipped.h"
#include "reference/words_in.h"

namespace backmark::reference {

namespace {

constexpr std::string_view band_file = "climate-bands.csv";
constexpr std::string_view case_file = "case-materials.csv";
constexpr std::string_view shelf_file = "shelf-materials.csv";

std::optional<double> maybe(std::string_view file, const std::string& cell) {
  return cell.empty() ? std::nullopt : std::optional(own_number(file, cell));
}

// The row with the longest word in the value.
template <class Row>
const Row* find_row(const std::vector<Row>& rows, std::string_view value) {
  const std::string lower = lower_ascii(value);
  const Row* best = nullptr;
  std::size_t longest = 0;
  for (const Row& row : rows) {
    const std::size_t length = longest_word_in(lower, row.words);
    if (length > longest) {
      longest = length;
      best = &row;
    }
  }
  return best;
}

}  // namespace

const std::vector<ClimateBand>& climate_bands() {
  static const std::vector<ClimateBand> list = [] {
    std::vector<ClimateBand> bands;
    for (const auto& cells : own_rows(band_file)) {
      bands.push_back({cells[0], bar_words(cells[1]), maybe(band_file, cells[2]),
                       maybe(band_file, cells[3]), maybe(band_file, cells[4]),
                       maybe(band_file, cells[5]), cells[6], cells[7], cells[8]});
    }
    return bands;
  }();
  return list;
}

const ClimateBand* climate_band(std::string_view value) {
  return find_row(climate_bands(), value);
}

const std::vector<CaseMaterial>& case_materials() {
  static const std::vector<CaseMaterial> list = [] {
    std::vector<CaseMaterial> materials;
    for (const auto& cells : own_rows(case_file)) {
      materials.push_back({cells[0], bar_words(cells[1]), cells[2], cells[3],
                           cells[4].empty() ? std::vector<std::string>{} : bar_words(cells[4]),
                           cells[5], cells[6], cells[7]});
    }
    return materials;
  }();
  return list;
}

const CaseMaterial* case_material(std::string_view value) {
  return find_row(case_materials(), value);
}

const std::vector<ShelfMaterial>& shelf_materials() {
  static const std::vector<ShelfMaterial> list = [] {
    std::vector<ShelfMaterial> materials;
    for (const auto& cells : own_rows(shelf_file)) {
      materials.push_back({cells[0], bar_words(cells[1]), own_number(shelf_file, cells[2]),
                           own_number(shelf_file, cells[3]), maybe(shelf_file, cells[4]),
                           own_number(shelf_file, cells[5]), cells[6], cells[7], cells[8]});
    }
    return materials;
  }();
  return list;
}

const ShelfMaterial* shelf_material(std::string_view value) {
  return find_row(shelf_materials(), value);
}

}  // namespace backmark::reference
