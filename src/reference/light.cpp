#include "reference/light.h"

#include <algorithm>

#include "base/text.h"
#include "reference/shipped.h"
#include "reference/words_in.h"

namespace backmark::reference {

namespace {

constexpr std::string_view wool_file = "blue-wool.csv";
constexpr std::string_view class_file = "light-classes.csv";
constexpr std::string_view material_file = "light-materials.csv";
constexpr std::string_view colour_file = "light-colours.csv";

LightClass class_of(std::string_view file, const std::string& code) {
  if (code.size() != 2 || code[0] != 'R' || code[1] < '0' || code[1] > '3') {
    throw BrokenPromise(fmt::format("{} has \"{}\" where R0 to R3 belongs", file, code));
  }
  return static_cast<LightClass>(code[1] - '0');
}

// An empty cell is no limit.
double limit_of(const std::string& cell) {
  return cell.empty() ? 0 : own_number(class_file, cell);
}

std::vector<LightMaterial> read_materials() {
  std::vector<LightMaterial> list;
  for (const auto& cells : own_rows(material_file)) {
    list.push_back({cells[0], bar_words(cells[1]), class_of(material_file, cells[2]),
                    static_cast<int>(own_number(material_file, cells[3])), false,
                    cells[4] == "yes", cells[5], cells[6], cells[7]});
  }
  for (const auto& cells : own_rows(colour_file)) {
    list.push_back({cells[0], bar_words(cells[1]), class_of(colour_file, cells[2]), 0, true,
                    false, cells[3], cells[4], cells[5]});
  }
  return list;
}

const LightMaterial* find_row(std::string_view value, bool colour) {
  const LightMaterial* best = nullptr;
  std::size_t longest = 0;
  for (const LightMaterial& one : light_materials()) {
    const std::size_t length = one.colour == colour ? longest_word_in(value, one.words) : 0;
    if (length > longest) {
      longest = length;
      best = &one;
    }
  }
  return best;
}

}  // namespace

std::string_view code_of(LightClass sensitivity) {
  constexpr std::string_view codes[] = {"R0", "R1", "R2", "R3"};
  return codes[static_cast<std::size_t>(sensitivity)];
}

const std::vector<BlueWool>& blue_wool() {
  static const std::vector<BlueWool> list = [] {
    std::vector<BlueWool> steps;
    for (const auto& cells : own_rows(wool_file)) {
      steps.push_back({static_cast<int>(own_number(wool_file, cells[0])),
                       class_of(wool_file, cells[1]), own_number(wool_file, cells[2]),
                       own_number(wool_file, cells[3]), cells[4], cells[5], cells[6]});
    }
    return steps;
  }();
  return list;
}

const std::vector<LightLimit>& light_limits() {
  static const std::vector<LightLimit> list = [] {
    std::vector<LightLimit> limits;
    for (const auto& cells : own_rows(class_file)) {
      limits.push_back({cells[0], class_of(class_file, cells[1]), cells[2], limit_of(cells[4]),
                        limit_of(cells[5]), limit_of(cells[6]), cells[7], cells[8], cells[9]});
    }
    return limits;
  }();
  return list;
}

const LightLimit* light_limit(std::string_view rule, LightClass sensitivity) {
  const auto& limits = light_limits();
  const auto at = std::find_if(limits.begin(), limits.end(), [&](const LightLimit& one) {
    return one.rule == rule && one.sensitivity == sensitivity;
  });
  return at == limits.end() ? nullptr : &*at;
}

std::vector<std::string> light_rules() {
  std::vector<std::string> rules;
  for (const LightLimit& one : light_limits()) {
    if (rules.empty() || rules.back() != one.rule) {
      rules.push_back(one.rule);
    }
  }
  return rules;
}

const std::vector<LightMaterial>& light_materials() {
  static const std::vector<LightMaterial> list = read_materials();
  return list;
}

const LightMaterial* light_material(std::string_view value) {
  return find_row(value, false);
}

const LightMaterial* light_colour(std::string_view value) {
  return find_row(value, true);
}

}  // namespace backmark::reference
