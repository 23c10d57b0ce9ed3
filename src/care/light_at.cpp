#include "care/light_at.h"

#include <cmath>

#include "base/text.h"
#include "care/photometry.h"

namespace backmark::care {

namespace {

constexpr double mm_in_m = 1000;

// The newest and then brightest of the readings at one place; null: none.
const model::LightReading* reading_of(const CaseContents& contents,
                                      model::Id<model::Piece> place) {
  const model::LightReading* best = nullptr;
  for (const model::LightReading* one : contents.readings) {
    if (one->piece == place &&
        (best == nullptr || std::pair(one->day, one->lux) > std::pair(best->day, best->lux))) {
      best = one;
    }
  }
  return best;
}

LightAt measured(const model::LightReading& reading, const char* where, double dim) {
  return {Lux{reading.lux * dim}, reading.uv_uw_lm, where, false};
}

}  // namespace

LightAt light_at(const CaseContents& contents, const model::Placement& placement, double dim) {
  if (const auto* at_piece = reading_of(contents, placement.piece)) {
    return measured(*at_piece, "measured at the piece", dim);
  }
  if (const auto* in_case = reading_of(contents, {})) {
    return measured(*in_case, "measured in the case", dim);
  }
  LightAt light;
  if (contents.fixtures.empty()) {
    return light;
  }
  Lux sum{0};
  double uv_sum = 0;
  bool uv_known = true;
  for (const model::Fixture* fixture : contents.fixtures) {
    const double aside =
        std::hypot(fixture->x_mm - placement.x_mm, fixture->y_mm - placement.y_mm);
    const Lux one = illuminance_below(fixture->intensity_cd * fixture->dimmed,
                                      fixture->z_mm / mm_in_m, aside / mm_in_m);
    sum = sum + one;
    uv_known = uv_known && fixture->uv_uw_lm.has_value();
    uv_sum += one.value * fixture->uv_uw_lm.value_or(0);
    light.near_source = light.near_source || std::hypot(aside, fixture->z_mm) <
                                                 point_source_multiple * fixture->size_mm;
  }
  light.lux = sum * dim;
  if (uv_known && sum.value > 0) {
    light.uv_uw_lm = uv_sum / sum.value;
  }
  light.from = fmt::format("reckoned from {} {}", contents.fixtures.size(),
                           contents.fixtures.size() == 1 ? "fixture" : "fixtures");
  return light;
}

}  // namespace backmark::care
