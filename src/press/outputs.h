// The visible list of everything the program prints.
#pragma once

#include <string_view>
#include <vector>

#include "press/job.h"

namespace backmark::press {

struct Output {
  std::string_view name;     // "checklist"
  std::string_view title;    // "Checklist"
  words::Audience audience;  // whom it is for unless the job says otherwise
  std::string_view caution;  // what it must carry; empty: nothing
  Result<Printed> (*print)(const PressJob& job);
};

// In the order in which they are offered.
const std::vector<Output>& outputs();

// Null if there is none of that name.
const Output* output_named(std::string_view name);

}  // namespace backmark::press
