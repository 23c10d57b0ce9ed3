// The work that leads to opening day, as the curator keeps it.
#pragma once

#include <string>

#include "model/id.h"

namespace backmark::model {

// Which pieces a task holds up: once it begins, such a piece must have been decided on. The
// numbers stand in shows; never renumber.
enum class Holds { nothing, show, book, loan };

// Times are calendar days, least <= likely <= greatest.
struct Task {
  Id<Task> id;
  std::string key;
  std::string group;
  std::string title;
  std::string after;  // keys of what must be done before it, parted by spaces
  double least_days = 0;
  double likely_days = 0;
  double greatest_days = 0;
  Holds holds = Holds::nothing;
  bool done = false;

  friend bool operator==(const Task&, const Task&) = default;
};

}  // namespace backmark::model
