#include <cmath>
#include <optional>

#include "base/text.h"
#include "desk/formula_lists.h"

namespace backmark::desk {

namespace {

constexpr double millimetres_an_inch = 25.4;

// "240x300": two measures in millimetres.
std::optional<std::pair<double, double>> sides_of(const std::string& text) {
  const auto parts = split(text, "x");
  const auto width = to_number(trim(parts.front()));
  const auto height = to_number(trim(parts.back()));
  if (parts.size() != 2 || !width || !height || *width <= 0 || *height <= 0) {
    return std::nullopt;
  }
  return std::pair{*width, *height};
}

std::string sides(double width, double height) {
  return fmt::format("{:g}x{:g}", width, height);
}

Result<Reckoned> with_bleed(const Given& given) {
  const auto trim_mm = sides_of(given.text("trim_mm"));
  if (!trim_mm) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no trim", given.text("trim_mm")),
                   "", "write trim_mm=240x300"};
  }
  const double bleed = 2 * given.number("bleed_mm");
  return Reckoned{sides(trim_mm->first + bleed, trim_mm->second + bleed)};
}

// ISO 216: A0 is 841 x 1189 and B0 1000 x 1414; each next is the former cut in half, rounded
// down.
Result<Reckoned> paper(const Given& given) {
  const std::string name = given.text("name");
  const auto step = to_whole(name.size() > 1 ? name.substr(1) : "");
  if ((name[0] != 'A' && name[0] != 'B') || !step || *step < 0 || *step > 10) {
    return Problem{Fault::not_found, fmt::format("no paper is called \"{}\"", name), "",
                   "A0 to A10 and B0 to B10 of ISO 216 are known"};
  }
  long width = name[0] == 'A' ? 841 : 1000;
  long height = name[0] == 'A' ? 1189 : 1414;
  for (long i = 0; i < *step; ++i) {
    const long half = height / 2;
    height = width;
    width = half;
  }
  return Reckoned{sides(static_cast<double>(width), static_cast<double>(height))};
}

// Tolerance of ISO 216 for a side of so many millimetres.
double tolerance(double side_mm) {
  return side_mm <= 150 ? 1.5 : (side_mm <= 600 ? 2 : 3);
}

Result<Reckoned> pixels(const Given& given) {
  const double length = given.has("mm") ? given.number("mm") : given.number("trim_w_mm", 0);
  if (length <= 0) {
    return missing_input("the length is missing",
                         "write mm=..., or trim_w_mm=... and bleed_mm=...");
  }
  const double all = length + 2 * given.number("bleed_mm", 0);
  const double exact = all / millimetres_an_inch * given.number("ppi");
  return Reckoned{given.text("round") == "up" ? std::ceil(exact - 1e-9) : std::round(exact)};
}

}  // namespace

std::vector<Formula> book_formulas() {
  const Input dots{"px", "px", 1, 1e7};
  const Input resolution{"ppi", "ppi", 1, 1e5};
  return {
      {.name = "print_width",
       .what = "print width at resolution",
       .inputs = {dots, resolution},
       .unit = "in",
       .source = "definition: pixels by pixels an inch",
       .notes = "",
       .value = [](const std::vector<double>& in) { return in[0] / in[1]; }},
      {.name = "pixels",
       .what = "pixels for a printed length",
       .inputs = {{"mm", "mm", 0, 1e5, false, true},
                  {"trim_w_mm", "mm", 0, 1e5, false, true},
                  {"bleed_mm", "mm", 0, 100, false, true},
                  resolution,
                  {"round", "", 0, 0, false, true, "up|nearest"}},
       .unit = "px",
       .source = "definition: 1 inch = 25.4 mm",
       .notes = "bleed on both sides; to the nearest pixel unless round=up",
       .reckon = pixels,
       .also = {"pixels for A4 width", "pixels for full-bleed width"}},
      {.name = "placed_resolution",
       .what = "effective resolution at placed size",
       .inputs = {dots, {"placed_mm", "mm", 0.01, 1e5}},
       .unit = "ppi",
       .source = "definition: 1 inch = 25.4 mm",
       .notes = "300 is asked of plates: common practice",
       .value =
           [](const std::vector<double>& in) { return in[0] / (in[1] / millimetres_an_inch); }},
      {.name = "page_count",
       .what = "page count rounded up",
       .inputs = {{"pages", "", 1, 1e5}, {"signature", "", 1, 128}},
       .unit = "pages",
       .source = "printers' rule: whole signatures, every side counted (common practice)",
       .notes = "",
       .value = [](const std::vector<double>& in) { return std::ceil(in[0] / in[1]) * in[1]; }},
      {.name = "bleed_size",
       .what = "sheet size with bleed",
       .inputs = {{"trim_mm", "mm", 0, 0, false, false, "*"}, {"bleed_mm", "mm", 0, 100}},
       .unit = "mm",
       .source = "bleed on each edge",
       .notes = "",
       .reckon = with_bleed},
      {.name = "paper_size",
       .what = "ISO size",
       .inputs = {{"name", "", 0, 0, false, false, "*"}},
       .unit = "mm",
       .source = "ISO 216 (secondary)",
       .notes = "not the B sizes of Japan",
       .reckon = paper},
      {.name = "trim_tolerance",
       .what = "ISO trim tolerance",
       .inputs = {{"dimension_mm", "mm", 0.1, 1e4}},
       .unit = "mm",
       .source = "ISO 216 (secondary)",
       .notes = "either way",
       .value = [](const std::vector<double>& in) { return tolerance(in[0]); }},
      {.name = "spine",
       .what = "spine thickness",
       .inputs = {{"pages", "", 1, 1e5}, {"leaf_caliper_mm", "mm", 0.001, 10}},
       .unit = "mm",
       .source = "leaves = pages / 2; common practice",
       .notes = "without boards; caliper from the paper maker",
       .value = [](const std::vector<double>& in) { return in[0] / 2 * in[1]; }},
  };
}

}  // namespace backmark::desk
