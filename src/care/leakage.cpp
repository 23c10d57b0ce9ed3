#include "care/leakage.h"

#include <cmath>
#include <numbers>

#include "care/vapour.h"

namespace backmark::care {

double empty_half_time_days(double air_changes) {
  return std::numbers::ln2 / air_changes;
}

double air_changes_of(double before, double after, double days) {
  return std::log(before / after) / days;
}

RelativeHumidity humidity_after(RelativeHumidity start,
                                RelativeHumidity room,
                                double tau_days,
                                double days) {
  return room + (start - room) * std::exp(-days / tau_days);
}

double buffered_tau_days(const Buffer& buffer, double saturated_g_m3) {
  const double held = buffer.reservoir_g_kg * buffer.loading_kg_m3 / (0.01 * saturated_g_m3);
  return (1 + held) / buffer.air_changes;
}

double buffered_half_time_days(const Buffer& buffer, Celsius air) {
  const double at_20 = 4 * buffer.reservoir_g_kg * buffer.loading_kg_m3 / buffer.air_changes;
  return at_20 * absolute_humidity({20}, {100}) / absolute_humidity(air, {100});
}

double buffer_mass_kg(const Outside& outside,
                      double days,
                      double reservoir_g_kg,
                      double drift_percent) {
  const double water_g = outside.saturated_g_m3 * outside.difference * outside.volume_m3 *
                         outside.air_changes * days;
  return water_g / (reservoir_g_kg * drift_percent);
}

double buffer_days(const Outside& outside,
                   double mass_kg,
                   double reservoir_g_kg,
                   double drift_percent) {
  const double water_g_day =
      outside.saturated_g_m3 * outside.difference * outside.volume_m3 * outside.air_changes;
  return mass_kg * reservoir_g_kg * drift_percent / water_g_day;
}

double years_to_tarnish(double sulphide_ppt, double dose_ppb_years) {
  return dose_ppb_years * 1000 / sulphide_ppt;
}

}  // namespace backmark::care
