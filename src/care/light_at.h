// How much light falls where a piece stands, and how that is known.
#pragma once

#include <optional>
#include <string>

#include "care/contents.h"

namespace backmark::care {

struct LightAt {
  std::optional<Lux> lux;  // none: neither measured nor reckoned
  std::optional<double> uv_uw_lm;
  std::string
      from;  // "measured at the piece", "measured in the case", "reckoned from 2 fixtures"
  bool near_source = false;  // a fixture is nearer than the formula for a point allows
};

// A reading at the piece stands before one of its case, and both before the fixtures; of
// several readings of the newest day the brightest counts. From fixtures: the sum of I
// cos(angle) / d^2 over them, each at its dimmed share; the beam's peak is taken for every
// direction, so that a piece beside it has less. `dim` is a share of the present light.
LightAt light_at(const CaseContents& contents, const model::Placement& placement, double dim);

}  // namespace backmark::care
