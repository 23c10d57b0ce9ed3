#include "base/text.h"
#include "desk/formula_lists.h"

namespace backmark::desk {

namespace {

const char* const local = "local law may be stricter";

// Above 27 and up to 80 in a wall object may stand out 4 in, a handrail 4.5, one on a post 12.
Result<Reckoned> protrusion(const Given& given) {
  const double edge = given.number("leading_edge_in");
  const std::string kind = given.text("kind");
  const double most = kind == "post" ? 12 : (kind == "handrail" ? 4.5 : 4);
  const bool counts = edge > 27 && edge <= 80;
  return Reckoned{!counts || given.number("protrusion_in") <= most ? 1 : 0};
}

Result<Reckoned> obstructed(const Given& given) {
  const double depth = given.number("reach_depth_in");
  const bool side = given.text("kind") == "side";
  const double near = side ? 10 : 20;
  const double far = side ? 24 : 25;
  if (depth > far) {
    return Problem{Fault::refused,
                   fmt::format("a reach of {:g} in is deeper than {:g}", depth, far), "",
                   "bring the thing nearer"};
  }
  return Reckoned{depth <= near ? 48 : (side ? 46 : 44)};
}

Result<Reckoned> turning(const Given& given) {
  const bool inches = given.text("unit") == "in";
  return Reckoned{inches ? 60 : 1525, inches ? "in" : "mm", ""};
}

Result<Reckoned> case_top(const Given& given) {
  const double top = given.number("case_top_in");
  const bool look_down = given.number("must_look_into", 0) != 0;
  return Reckoned{look_down ? (top <= 36 ? 1 : 0) : (top >= 33 && top <= 40 ? 1 : 0)};
}

}  // namespace

std::vector<Formula> access_formulas() {
  return {
      {.name = "protrusion",
       .what = "protruding object test",
       .inputs = {{"leading_edge_in", "in", 0, 500},
                  {"protrusion_in", "in", 0, 500},
                  {"kind", "", 0, 0, false, true, "wall|post|handrail"}},
       .unit = "bool",
       .source = "2010 ADA Standards 307.2; posts 307.3 (from memory; 1991 text read)",
       .notes = local,
       .reckon = protrusion},
      {.name = "reach",
       .what = "reach test, unobstructed forward",
       .inputs = {{"height_in", "in", 0, 500}},
       .unit = "bool",
       .source = "2010 ADA Standards 308.2.1 and 308.3.1: 15 to 48 in",
       .notes = local,
       .value =
           [](const std::vector<double>& in) { return in[0] >= 15 && in[0] <= 48 ? 1.0 : 0.0; },
       .also = {"reach test, unobstructed side"}},
      {.name = "reach_over",
       .what = "maximum forward reach height over obstruction",
       .inputs = {{"reach_depth_in", "in", 0, 100},
                  {"kind", "", 0, 0, false, true, "forward|side"}},
       .unit = "in",
       .source = "2010 ADA Standards 308.2.2; side beyond 10 in from memory",
       .notes = local,
       .reckon = obstructed},
      {.name = "turning_circle",
       .what = "turning circle diameter minimum",
       .inputs = {{"unit", "", 0, 0, false, true, "mm|in"}},
       .unit = "mm",
       .source = "2010 ADA Standards 304.3.1",
       .notes = local,
       .reckon = turning},
      {.name = "case_top",
       .what = "case top height test, look-down contents",
       .inputs = {{"case_top_in", "in", 0, 200}, {"must_look_into", "", 0, 1, false, true}},
       .unit = "bool",
       .source = "Design for Accessibility: A Cultural Administrator's Handbook, p. 117",
       .notes = "36 in at most where one looks down into it, else 33 to 40",
       .reckon = case_top,
       .also = {"case top height test"}},
  };
}

}  // namespace backmark::desk
