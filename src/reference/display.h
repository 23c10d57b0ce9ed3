// What cases are asked to hold: the air that materials bear, what a case gives off, and what
// its shelves are made of.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace backmark::reference {

// The air that a group of materials bears; an end that is none is open.
struct ClimateBand {
  std::string band;                // "leather and hide"
  std::vector<std::string> words;  // as observations write them, lower case
  std::optional<double> rh_low;    // percent
  std::optional<double> rh_high;
  std::optional<double> c_low;
  std::optional<double> c_high;
  std::string note;
  std::string source;
  std::string status;
};
// Rows of climate-bands.csv.
const std::vector<ClimateBand>& climate_bands();
// The band of the material that a value names: the row with the longest of its words in it;
// null: none is known.
const ClimateBand* climate_band(std::string_view value);

// Something that shares the air of pieces.
struct CaseMaterial {
  std::string material;
  std::vector<std::string> words;
  std::string verdict;  // "avoid", "isolate", "test", "preferred", "sorbent"
  std::string emits;
  std::vector<std::string> harms;  // words of materials of pieces
  std::string note;
  std::string source;
  std::string status;
};
// Rows of case-materials.csv.
const std::vector<CaseMaterial>& case_materials();
const CaseMaterial* case_material(std::string_view value);

// What a shelf is made of. The stiffness is the lower end of what is printed.
struct ShelfMaterial {
  std::string material;
  std::vector<std::string> words;
  double stiffness_gpa = 0;
  double density_kg_m3 = 0;
  std::optional<double> stress_limit_mpa;  // for lasting load, by a maker; none: not said
  double creep_factor = 1;                 // of sag, over the years
  std::string note;
  std::string source;
  std::string status;
};
// Rows of shelf-materials.csv.
const std::vector<ShelfMaterial>& shelf_materials();
const ShelfMaterial* shelf_material(std::string_view value);

}  // namespace backmark::reference
