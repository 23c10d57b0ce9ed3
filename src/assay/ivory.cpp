#include "assay/ivory.h"

#include <cmath>

namespace backmark::assay {

double angle_score(const AngleModel& model, double degrees) {
  return (degrees - model.mean) / model.sd;
}

double elephant_to_mammoth(double degrees) {
  const double elephant = angle_score(elephant_angles, degrees);
  const double mammoth = angle_score(mammoth_angles, degrees);
  return std::exp(0.5 * (mammoth * mammoth - elephant * elephant)) * mammoth_angles.sd /
         elephant_angles.sd;
}

double even_angle() {
  // The ratio rises with the angle between the two means.
  double low = mammoth_angles.mean;
  double high = elephant_angles.mean;
  for (int step = 0; step < 60; ++step) {
    const double middle = 0.5 * (low + high);
    (elephant_to_mammoth(middle) < 1 ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace backmark::assay
