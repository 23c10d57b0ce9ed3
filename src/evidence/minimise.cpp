#include "evidence/minimise.h"

#include <algorithm>
#include <limits>
#include <memory>
#include <nlopt.h>

#include "base/result.h"

namespace backmark::evidence {

namespace {

struct Course {
  const Smooth* smooth = nullptr;
  std::vector<double> x;
  std::vector<double> slope;
  std::vector<double> best;
  double best_value = std::numeric_limits<double>::infinity();
};

double evaluate(unsigned count, const double* x, double* slope, void* held) {
  auto& course = *static_cast<Course*>(held);
  course.x.assign(x, x + count);
  course.slope.assign(count, 0.0);
  const double value = (*course.smooth)(course.x, course.slope);
  if (value < course.best_value) {
    course.best_value = value;
    course.best = course.x;
  }
  if (slope != nullptr) {
    std::copy(course.slope.begin(), course.slope.end(), slope);
  }
  return value;
}

struct DestroyOptimiser {
  void operator()(nlopt_opt optimiser) const { nlopt_destroy(optimiser); }
};
using Optimiser = std::unique_ptr<std::remove_pointer_t<nlopt_opt>, DestroyOptimiser>;

}  // namespace

std::vector<double> minimise(const Smooth& smooth,
                             std::vector<double> x,
                             const Descent& descent) {
  if (x.empty()) {
    return x;
  }
  const Optimiser optimiser(nlopt_create(NLOPT_LD_LBFGS, static_cast<unsigned>(x.size())));
  if (!optimiser) {
    throw BrokenPromise("NLopt gave no optimiser");
  }
  Course course;
  course.smooth = &smooth;
  course.best = x;
  nlopt_set_min_objective(optimiser.get(), evaluate, &course);
  if (!descent.lowest.empty()) {
    nlopt_set_lower_bounds(optimiser.get(), descent.lowest.data());
  }
  nlopt_set_ftol_rel(optimiser.get(), descent.enough);
  nlopt_set_maxeval(optimiser.get(), descent.most_steps);
  double value = 0;
  // A negative outcome only says that rounding stopped the line search: the best point stands.
  nlopt_optimize(optimiser.get(), x.data(), &value);
  return course.best;
}

}  // namespace backmark::evidence
