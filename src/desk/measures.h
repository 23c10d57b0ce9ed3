// Figures that a person gives for a thing that is measured or not: within bounds, or not given,
// or taken back.
#pragma once

#include <optional>
#include <string>

#include "desk/operation.h"
#include "model/id.h"

namespace backmark::desk {

struct Bounds {
  double low = 0;
  double high = 0;
  bool above = false;  // `low` itself is too little
  std::string unit = {};
};

// Sets `value` from the option `name`, if it is given; "unknown" takes it back. Problems:
// bad_input (no number; outside the bounds), with the option as its place.
Result<Done> take(const Call& call,
                  const std::string& name,
                  const Bounds& bounds,
                  std::optional<double>& value);
// The same where there is no unknown.
Result<Done> take(const Call& call,
                  const std::string& name,
                  const Bounds& bounds,
                  double& value);
// "40-55": two ends of a range, the low one first; "unknown" takes both back.
Result<Done> take_range(const Call& call,
                        const std::string& name,
                        const Bounds& bounds,
                        std::optional<double>& low,
                        std::optional<double>& high);
// The first Problem of several takings.
template <class... Results>
Result<Done> all_taken(const Results&... results) {
  for (const Result<Done>* one : {&results...}) {
    if (!*one) {
      return *one;
    }
  }
  return Done{};
}

// The day of an option, "2026-11-25"; `otherwise` if it is not given.
Result<model::DayNumber> day_given(const Call& call,
                                   const std::string& name,
                                   model::DayNumber otherwise);

// "2027-06-26"; empty for unknown_day.
std::string iso_day(model::DayNumber day);

}  // namespace backmark::desk
