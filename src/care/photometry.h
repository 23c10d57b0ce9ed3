// Illuminance from lamps: the inverse-square and cosine laws (IES Lighting Definitions). All
// lengths in metres, intensities in candela, angles in degrees from the normal of the surface.
#pragma once

#include "base/amount.h"

namespace backmark::care {

// E = I cos(angle) / d^2 for a source that is small beside its distance. Beyond 90 degrees the
// light falls on the back: 0.
Lux illuminance(double intensity_cd, double distance_m, double angle_deg);

// The same for a lamp `height_m` above a horizontal plane and `offset_m` to the side:
// E = I h / (h^2 + x^2)^(3/2).
Lux illuminance_below(double intensity_cd, double height_m, double offset_m);

// A small diffuse panel that faces down, by what it gives straight below: E = E0 cos^4.
Lux illuminance_of_panel(Lux below, double height_m, double offset_m);

// The intensity that gives a level: I = E d^2 / cos(angle); angle < 90.
double intensity_for(Lux level, double distance_m, double angle_deg);

// The distance at which a lamp gives a level: d = sqrt(I cos(angle) / E); level > 0.
double distance_for(double intensity_cd, Lux level, double angle_deg);

// Candela of a source of so many lumens that shines alike in all directions.
double intensity_of_even_source(double flux_lm);

// Nearer than this the formula for a point no longer holds: five times the largest measure of
// the source (rule of lighting practice).
constexpr double point_source_multiple = 5;

}  // namespace backmark::care
