#include "care/beam.h"

namespace backmark::care {

namespace {

double rigidity(const Beam& beam) {
  return beam.stiffness_pa * beam.second_moment_m4;
}

double cube(double x) {
  return x * x * x;
}

}  // namespace

double second_moment(double width_m, double thickness_m) {
  return width_m * cube(thickness_m) / 12;
}

double sag_even(const Beam& beam, double load_n_m) {
  return 5 * load_n_m * cube(beam.length_m) * beam.length_m / (384 * rigidity(beam));
}

double sag_middle(const Beam& beam, double load_n) {
  return load_n * cube(beam.length_m) / (48 * rigidity(beam));
}

double sag_bracket_even(const Beam& beam, double load_n_m) {
  return load_n_m * cube(beam.length_m) * beam.length_m / (8 * rigidity(beam));
}

double sag_bracket_end(const Beam& beam, double load_n) {
  return load_n * cube(beam.length_m) / (3 * rigidity(beam));
}

double moment_even(double load_n_m, double length_m) {
  return load_n_m * length_m * length_m / 8;
}

double moment_middle(double load_n, double length_m) {
  return load_n * length_m / 4;
}

double moment_bracket_even(double load_n_m, double length_m) {
  return load_n_m * length_m * length_m / 2;
}

double moment_bracket_end(double load_n, double length_m) {
  return load_n * length_m;
}

double bending_stress(double moment_n_m, double width_m, double thickness_m) {
  return 6 * moment_n_m / (width_m * thickness_m * thickness_m);
}

}  // namespace backmark::care
