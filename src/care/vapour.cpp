#include "care/vapour.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace backmark::care {

namespace {

constexpr double gas_constant = 8.314;  // J/(mol K)
constexpr double water_g_per_mol = 18.015;

double kelvin(Celsius air) {
  return air.value + 273.15;
}

}  // namespace

const std::vector<Magnus>& magnus_sets() {
  static const std::vector<Magnus> sets = {
      {"Magnus-WMO", 6.112, 17.62, 243.12, "WMO-No. 8 (2008), after Sonntag 1990"},
      {"Tetens", 6.1078, 7.5 * std::numbers::ln10, 237.3,
       "Tetens 1930, as 10^(7.5T/(T+237.3))"},
      {"17.27/237.3", 6.1078, 17.27, 237.3, "Tetens 1930, rounded to base e"},
      {"17.625/243.04", 6.1094, 17.625, 243.04,
       "Alduchov and Eskridge 1996, Journal of Applied Meteorology 35"}};
  return sets;
}

const Magnus* magnus_set(std::string_view name) {
  const auto& sets = magnus_sets();
  const auto at = std::find_if(sets.begin(), sets.end(),
                               [name](const Magnus& one) { return one.name == name; });
  return at == sets.end() ? nullptr : &*at;
}

double saturation_hpa(Celsius air, const Magnus& set) {
  return set.scale_hpa * std::exp(set.a * air.value / (set.b_c + air.value));
}

Celsius dew_point(Celsius air, RelativeHumidity humidity, const Magnus& set) {
  const double g = std::log(humidity.value / 100) + set.a * air.value / (set.b_c + air.value);
  return {set.b_c * g / (set.a - g)};
}

double absolute_humidity(Celsius air, RelativeHumidity humidity, const Magnus& set) {
  const double pressure_pa = saturation_hpa(air, set) * humidity.value;
  return pressure_pa * water_g_per_mol / (gas_constant * kelvin(air));
}

RelativeHumidity humidity_at(Celsius now,
                             RelativeHumidity humidity,
                             Celsius then,
                             const Magnus& set) {
  return {humidity.value * saturation_hpa(now, set) / saturation_hpa(then, set)};
}

double lifetime_multiplier(Celsius air, RelativeHumidity humidity, double energy_kj_mol) {
  const double slope = energy_kj_mol * 1000 / gas_constant;
  return std::pow(50 / humidity.value, 1.3) * std::exp(slope * (1 / kelvin(air) - 1 / 293.15));
}

double gas_ppb(double ug_m3, double g_per_mol, Celsius air, double pressure_kpa) {
  // 1 ug/m3 is 1e-6 / M mol in a cubic metre of P / (R T) mol.
  return ug_m3 / g_per_mol * gas_constant * kelvin(air) / pressure_kpa;
}

}  // namespace backmark::care
