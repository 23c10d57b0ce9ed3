// Sag and stress of a plain shelf: a rectangular strip, straight, elastic, bent a little. They
// give a feel for sag only; case, shelf, glass and fixings are the fabricator's and the local
// code's to decide. Newtons, metres, pascals.
#pragma once

namespace backmark::care {

constexpr double gravity = 9.80665;  // m/s2

// Second moment of area of a section b wide and t thick: b t^3 / 12.
double second_moment(double width_m, double thickness_m);

// A beam of length L, stiffness E and second moment I.
struct Beam {
  double length_m = 0;
  double stiffness_pa = 0;
  double second_moment_m4 = 0;
};

// Supported at both ends: 5 w L^4 / (384 E I) in the middle under w N/m; P L^3 / (48 E I) under
// one load in the middle.
double sag_even(const Beam& beam, double load_n_m);
double sag_middle(const Beam& beam, double load_n);
// Held at one end: w L^4 / (8 E I) and P L^3 / (3 E I) at the free end.
double sag_bracket_even(const Beam& beam, double load_n_m);
double sag_bracket_end(const Beam& beam, double load_n);

// Bending moment in the middle of a beam supported at both ends: w L^2 / 8, P L / 4.
double moment_even(double load_n_m, double length_m);
double moment_middle(double load_n, double length_m);
// At the wall of a beam held at one end: w L^2 / 2, P L.
double moment_bracket_even(double load_n_m, double length_m);
double moment_bracket_end(double load_n, double length_m);

// Bending stress at the surface of a rectangular section: 6 M / (b t^2).
double bending_stress(double moment_n_m, double width_m, double thickness_m);

}  // namespace backmark::care
