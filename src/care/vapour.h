// Water in the air of a case. Temperatures in degrees Celsius, pressures in hectopascal,
// relative humidity in percent, absolute humidity in grams per cubic metre.
#pragma once

#include <string_view>
#include <vector>

#include "base/amount.h"

namespace backmark::care {

// e_s = scale exp(a T / (b + T)) over water, in hPa; sets differ by less than 0.05 K in dew
// point indoors, so an answer says which it used.
struct Magnus {
  std::string_view name;
  double scale_hpa = 0;
  double a = 0;
  double b_c = 0;
  std::string_view source;
};

// The first is the one used where none is named: WMO-No. 8 (Sonntag 1990), -45 to +60 degrees.
const std::vector<Magnus>& magnus_sets();
// By name, or null.
const Magnus* magnus_set(std::string_view name);

constexpr double vapour_low_c = -45;
constexpr double vapour_high_c = 60;

// Saturation pressure over water.
double saturation_hpa(Celsius air, const Magnus& set = magnus_sets().front());

// Dew point; humidity > 0.
Celsius dew_point(Celsius air,
                  RelativeHumidity humidity,
                  const Magnus& set = magnus_sets().front());

// Grams of water in a cubic metre: e 18.015 / (8.314 T).
double absolute_humidity(Celsius air,
                         RelativeHumidity humidity,
                         const Magnus& set = magnus_sets().front());

// Humidity after the air of a closed case is warmed or cooled and no water comes or goes (the
// vapour pressure is held). Above 100 means that water settles.
RelativeHumidity humidity_at(Celsius now,
                             RelativeHumidity humidity,
                             Celsius then,
                             const Magnus& set = magnus_sets().front());

// How many times slower (above 1) or faster chemical decay runs than at 20 degrees and 50 %:
// (50/RH)^1.3 exp((Ea/R)(1/T - 1/293.15)). S. Michalski 2002, form from memory; for paper, film
// and dyes (100 kJ/mol) and varnish (70). Says nothing of tarnish or cracking.
double lifetime_multiplier(Celsius air, RelativeHumidity humidity, double energy_kj_mol);

// Parts per billion of a gas of so many micrograms a cubic metre (ideal gas).
double gas_ppb(double ug_m3, double g_per_mol, Celsius air, double pressure_kpa);

}  // namespace backmark::care
