// Density by weighing in air and in water.
//
//     rho = Wa (rho_w - rho_a) / (Wa - Ww) + rho_a,
// Wa and Ww the balance's readings in air and in water, rho_w the density of the water at its
// temperature, rho_a that of the air (the correction for buoyancy in air of balance makers'
// density instructions). Clinging bubbles and trapped air lower it; water that soaks in raises
// it slowly.
#pragma once

#include "base/amount.h"
#include "base/result.h"

namespace backmark::assay {

inline constexpr double usual_air_density = 0.0012;  // g/cm3
inline constexpr double coldest_water = 0;           // degrees C
inline constexpr double warmest_water = 40;

// kg/m3 of air-free water at 101.325 kPa; Tanaka et al., Metrologia 38 (2001) 301-309,
// equation 1. Problem: refused outside 0 to 40 degrees C.
Result<double> water_density(Celsius temperature);
// The older equation of Bettin and Spieweck, kg/m3, as a check; the same limits.
Result<double> older_water_density(Celsius temperature);
// Degrees C at which the water is densest (3.983).
Celsius densest_water();

struct Weighing {
  Grams in_air;
  Grams in_water;
  Celsius water{20};
  Grams reading_u{0.002};  // standard uncertainty of each reading
  double air_density = usual_air_density;
};

struct Density {
  double g_cm3 = 0;
  double u = 0;  // standard uncertainty
};

// Problems: refused (weights that are no weights; a thing that weighs as much in water as in
// air or floats; water outside its limits).
Result<Density> density_of(const Weighing& weighing);

// Wa / (Wa - Ww) and its standard uncertainty by first-order propagation of independent
// readings: u^2 = (Ww/D^2)^2 u(Wa)^2 + (Wa/D^2)^2 u(Ww)^2. Air and the water's own density are
// left out.
Density relative_density(Grams in_air, Grams in_water, Grams reading_u);

}  // namespace backmark::assay
