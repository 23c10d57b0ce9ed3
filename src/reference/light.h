// How light changes materials: doses to a just noticeable fade, classes with their limits, and
// which material or colour stands in which class.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark::reference {

// R0 to R3 of CIE 157:2004, from insensitive to highly responsive.
enum class LightClass { none, low, medium, high };

// "R0" ... "R3".
std::string_view code_of(LightClass sensitivity);

// A step of the blue wool scale (ISO 105-B08), 1 the quickest to fade.
struct BlueWool {
  int step = 0;
  LightClass sensitivity = LightClass::high;
  double mlxh_with_uv = 0;  // megalux hours to one just noticeable fade
  double mlxh_without_uv = 0;
  std::string note;
  std::string source;
  std::string status;
};
// Rows of blue-wool.csv: steps 1 to 8.
const std::vector<BlueWool>& blue_wool();

// What a rule allows a class.
struct LightLimit {
  std::string rule;  // "CIE 157"
  LightClass sensitivity = LightClass::none;
  std::string word;     // "high"
  double lux = 0;       // 0: no limit
  double lxh_year = 0;  // 0: no limit
  double uv_uw_lm = 0;  // microwatts per lumen
  std::string note;
  std::string source;
  std::string status;
};
// Rows of light-classes.csv; each rule has every class.
const std::vector<LightLimit>& light_limits();
// The limit of a class under a rule, or null if there is no such rule.
const LightLimit* light_limit(std::string_view rule, LightClass sensitivity);
// Names of the rules, in the order of the table; the first is the one where none is named.
std::vector<std::string> light_rules();

struct LightMaterial {
  std::string material;            // "undyed leather"
  std::vector<std::string> words;  // as observations write it, lower case
  LightClass sensitivity = LightClass::none;
  int step = 0;         // of blue wool, the quickest of its class that is said; 0: not said
  bool colour = false;  // a colour of something that can be dyed
  bool dyed = false;    // a material that is often dyed: its colour may be the quicker to fade
  std::string note;
  std::string source;
  std::string status;
};
// Rows of light-materials.csv, then those of light-colours.csv.
const std::vector<LightMaterial>& light_materials();

// The material or colour that a value of an observation names: the row with the longest word
// or words in it, whole words only. Null: none is known.
const LightMaterial* light_material(std::string_view value);
const LightMaterial* light_colour(std::string_view value);

}  // namespace backmark::reference
