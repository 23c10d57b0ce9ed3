#include <cmath>
#include <numbers>

#include "base/text.h"
#include "desk/formula_lists.h"
#include "draw/colour.h"

namespace backmark::desk {

namespace {

draw::Colour colour(double rgb) {
  return draw::Colour::hex(static_cast<std::uint32_t>(rgb));
}

// One channel of sRGB as light, 0 to 1 (WCAG 2.2).
double linear(double channel) {
  return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(double rgb) {
  const auto code = static_cast<std::uint32_t>(rgb);
  const auto channel = [code](unsigned shift) {
    return linear(((code >> shift) & 255U) / 255.0);
  };
  return 0.2126 * channel(16) + 0.7152 * channel(8) + 0.0722 * channel(0);
}

Result<Reckoned> contrast(const Given& given) {
  const std::string fore = given.has("fg") ? "fg" : "text";
  const std::string back = given.has("bg") ? "bg" : "ground";
  for (const std::string& name : {fore, back}) {
    if (!given.has(name)) {
      return missing_input(fmt::format("\"{}\" is missing", name),
                           fmt::format("write {}=..., in sRGB", name));
    }
  }
  return Reckoned{draw::contrast(colour(given.number(fore)), colour(given.number(back)))};
}

// 2010 ADA Standards, Table 703.5.5: the height of the sign sets the first figure.
double character_height(double baseline_in, double distance_in) {
  struct Row {
    double below_in, first_in, near_in;
  };
  constexpr Row rows[] = {{70, 0.625, 72}, {120, 2, 180}, {1e9, 3, 252}};
  for (const Row& row : rows) {
    if (baseline_in <= row.below_in) {
      return row.first_in + std::max(0.0, distance_in - row.near_in) / 12 / 8;
    }
  }
  return 0;
}

// "20-150": two numbers, the first not above the second.
Result<std::pair<double, double>> range_of(const std::string& text) {
  const auto parts = split(text, "-");
  const auto low = to_number(trim(parts.front()));
  const auto high = to_number(trim(parts.back()));
  if (parts.size() != 2 || !low || !high || *low > *high) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no range", text), "",
                   "write two numbers, for example 20-150"};
  }
  return std::pair{*low, *high};
}

// Words that kinds of text are held to (Serrell 2015, as two libraries quote her).
std::string usual_words(const std::string& kind) {
  if (kind == "title") {
    return "1-7";
  }
  return kind == "introduction" ? "20-300" : "20-150";
}

Result<Reckoned> word_count(const Given& given) {
  const auto range =
      range_of(given.has("range") ? given.text("range") : usual_words(given.text("kind")));
  if (!range) {
    return range.problem();
  }
  const double words = given.number("words");
  return Reckoned{words >= range->first && words <= range->second ? 1 : 0};
}

Result<Reckoned> in_band(const Given& given) {
  const auto band = range_of(given.has("band_mm") ? given.text("band_mm") : "1100-1675");
  if (!band) {
    return band.problem();
  }
  const double centre = given.number("centre_mm");
  return Reckoned{centre >= band->first && centre <= band->second ? 1 : 0};
}

}  // namespace

std::vector<Formula> legibility_formulas() {
  const auto shade = [](const char* name) {
    return Input{name, "sRGB", 0, 0xFFFFFF, true, true};
  };
  return {
      {.name = "contrast",
       .what = "contrast ratio of two colours",
       .inputs = {shade("text"), shade("ground"), shade("fg"), shade("bg")},
       .unit = "",
       .source = "WCAG 2.2, contrast ratio and relative luminance",
       .notes = "7 is asked of label text, 4.5 of numbers",
       .reckon = contrast,
       .also = {"contrast ratio"}},
      {.name = "luminance",
       .what = "relative luminance",
       .inputs = {{"rgb", "sRGB", 0, 0xFFFFFF, true}},
       .unit = "",
       .source = "WCAG 2.2, relative luminance",
       .notes = "",
       .value = [](const std::vector<double>& in) { return luminance(in[0]); }},
      {.name = "character_height",
       .what = "minimum character height",
       .inputs = {{"baseline_in", "in", 40, 1000}, {"viewing_distance_in", "in", 0, 10000}},
       .unit = "in",
       .source = "2010 ADA Standards, Table 703.5.5",
       .notes = "signs; local law may be stricter",
       .value = [](const std::vector<double>& in) { return character_height(in[0], in[1]); }},
      {.name = "point_size",
       .what = "point size to millimetres",
       .inputs = {{"pt", "pt", 0, 1e6}},
       .unit = "mm",
       .source = "1 inch = 25.4 mm = 72 points",
       .notes = "",
       .value = [](const std::vector<double>& in) { return in[0] * 25.4 / 72; }},
      {.name = "x_height",
       .what = "x-height test",
       .inputs = {{"x_height_mm", "mm", 0, 1000}, {"minimum_mm", "mm", 0, 1000}},
       .unit = "bool",
       .source = "RNIB clear print: at least 2 mm, better 2.3",
       .notes = "1 passes, 0 fails",
       .value = [](const std::vector<double>& in) { return in[0] >= in[1] ? 1.0 : 0.0; }},
      {.name = "word_count",
       .what = "label word count test",
       .inputs = {{"words", "", 0, 1e6},
                  {"kind", "", 0, 0, false, true, "title|introduction|group|caption"},
                  {"range", "", 0, 0, false, true, "*"}},
       .unit = "bool",
       .source = "B. Serrell, Exhibit Labels, 2nd ed. 2015 (secondary)",
       .notes = "1 passes, 0 fails",
       .reckon = word_count},
      {.name = "visual_angle",
       .what = "visual angle of letter",
       .inputs = {{"height_mm", "mm", 0, 1e5}, {"distance_mm", "mm", 0.1, 1e6}},
       .unit = "arcmin",
       .source = "geometry: 2 atan(h / 2d)",
       .notes = "",
       .value =
           [](const std::vector<double>& in) {
             return 2 * std::atan(in[0] / (2 * in[1])) * 180 / std::numbers::pi * 60;
           }},
      {.name = "label_band",
       .what = "wall label band test",
       .inputs = {{"centre_mm", "mm", 0, 10000}, {"band_mm", "mm", 0, 0, false, true, "*"}},
       .unit = "bool",
       .source = "Glasgow Museums Display Guidelines: 1100-1675 mm (as quoted)",
       .notes = "1 inside, 0 outside",
       .reckon = in_band},
  };
}

}  // namespace backmark::desk
