// Light as a dose: lux times hours. Damage to colour follows the dose, whichever of the two
// made it (reciprocity; holds for display light, not for flash or laser).
#pragma once

#include "base/amount.h"

namespace backmark::care {

// Lux hours of so many hours at one level.
inline LuxHours light_dose(Lux level, double hours) {
  return {level.value * hours};
}

// Hours a level may last within a budget; level > 0.
inline double permitted_hours(LuxHours budget, Lux level) {
  return budget.value / level.value;
}

// Years until a dose is reached; megalux hours, lux > 0 and hours a year > 0.
inline double years_to_dose(double dose_mlxh, Lux level, double hours_per_year) {
  return dose_mlxh * 1e6 / (level.value * hours_per_year);
}

// Part of a dose (megalux hours, > 0) that has been spent; 1 is all of it.
inline double share_of_dose(LuxHours spent, double dose_mlxh) {
  return spent.value / (dose_mlxh * 1e6);
}

// Ultraviolet on the piece in mW/m2 from microwatts per lumen.
inline double ultraviolet_mw_m2(double uv_uw_per_lm, Lux level) {
  return uv_uw_per_lm * level.value / 1000;
}

// 1 lm/ft2 (footcandle) in lux: 1 / 0.3048^2.
constexpr double lux_of_footcandle = 1 / (0.3048 * 0.3048);

}  // namespace backmark::care
