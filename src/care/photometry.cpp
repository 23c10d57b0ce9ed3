#include "care/photometry.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace backmark::care {

namespace {

double cosine(double angle_deg) {
  return std::cos(angle_deg * std::numbers::pi / 180);
}

}  // namespace

Lux illuminance(double intensity_cd, double distance_m, double angle_deg) {
  return {std::max(0.0, intensity_cd * cosine(angle_deg) / (distance_m * distance_m))};
}

Lux illuminance_below(double intensity_cd, double height_m, double offset_m) {
  const double distance_m = std::hypot(height_m, offset_m);
  return {intensity_cd * height_m / (distance_m * distance_m * distance_m)};
}

Lux illuminance_of_panel(Lux below, double height_m, double offset_m) {
  const double slope = height_m / std::hypot(height_m, offset_m);
  return {below.value * slope * slope * slope * slope};
}

double intensity_for(Lux level, double distance_m, double angle_deg) {
  return level.value * distance_m * distance_m / cosine(angle_deg);
}

double distance_for(double intensity_cd, Lux level, double angle_deg) {
  return std::sqrt(std::max(0.0, intensity_cd * cosine(angle_deg)) / level.value);
}

double intensity_of_even_source(double flux_lm) {
  return flux_lm / (4 * std::numbers::pi);
}

}  // namespace backmark::care
