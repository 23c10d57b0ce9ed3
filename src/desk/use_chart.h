// When characters and makers were in use, as the Years page draws it; kept between calls where
// the door keeps shows.
#pragma once

#include <memory>

#include "desk/reckoned.h"
#include "evidence/in_use.h"

namespace backmark::desk {

struct UseChart {
  std::shared_ptr<const model::Show> show;  // that groups and makers look into
  YearSpan axis;
  std::vector<std::optional<YearSpan>> known;  // one a piece: its year, where known by itself
  std::vector<evidence::UseGroup> groups;
  std::vector<evidence::MakerUse> makers;
};

// Problems: those of store::Store::moment.
Result<std::shared_ptr<const UseChart>> use_chart(OpenShow& open, const Surroundings& around);

}  // namespace backmark::desk
