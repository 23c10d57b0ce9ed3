// Crossing lines on a cut face of elephant and mammoth ivory (Schreger lines): the angle of the
// outer ones, near the cement. E. O. Espinoza and M.-J. Mann, Journal of the American Institute
// for Conservation 32(3), 1993: means of 26 tusks each, elephant 124.2 (sd 9.28), mammoth 73.7
// (sd 9.76), single angles 95 to 163 and 35 to 115. A trained examiner still decides.
#pragma once

namespace backmark::assay {

struct AngleModel {
  double mean = 0;  // degrees
  double sd = 0;
  double low = 0;  // of single angles
  double high = 0;
};
inline constexpr AngleModel elephant_angles{124.2, 9.28, 95, 163};
inline constexpr AngleModel mammoth_angles{73.7, 9.76, 35, 115};
inline constexpr int enough_angles = 5;  // for a mean; common practice, no source

// (angle - mean) / sd.
double angle_score(const AngleModel& model, double degrees);
// How much likelier a mean angle is for elephant than for mammoth.
double elephant_to_mammoth(double degrees);
// The angle at which both are as likely.
double even_angle();

}  // namespace backmark::assay
