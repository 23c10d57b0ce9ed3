// Materials of small worn ornaments, with what the bench reads of each.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace backmark::reference {

struct Material {
  std::string name;
  std::string group;       // stone, organic, synthetic, glass, metal
  double density_low = 0;  // g/cm3, as published or from memory (status)
  double density_usual = 0;
  double density_high = 0;
  std::optional<double> index_low;  // refractive; none: opaque, no reading
  std::optional<double> index_high;
  double birefringence = 0;          // 0: none that is seen
  std::vector<std::string> uv_long;  // of inert, weak, strong
  std::vector<std::string> uv_short;
  std::vector<std::string> magnet;  // of no, weak, yes
  std::vector<std::string> seen;    // structures under the loupe
  bool porous = false;              // not to be wetted
  double hardness_low = 0;  // Mohs, for care and for wear that is seen; never for testing
  double hardness_high = 0;
  std::string source;
  std::string status;
};

// Rows of materials.csv, as they stand.
const std::vector<Material>& materials();

// What a mark of fineness claims.
struct FinenessMark {
  std::string mark;  // in lower case
  std::string metal;
  double permille = 0;  // 0: says a metal, no fineness
  std::string source;
  std::string status;
};
const std::vector<FinenessMark>& fineness_marks();

}  // namespace backmark::reference
