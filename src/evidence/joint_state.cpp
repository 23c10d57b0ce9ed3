#include "evidence/joint_state.h"

namespace backmark::evidence {

JointLayout::JointLayout(const JointShow& show)
    : years(show.years.length()), makers(static_cast<int>(show.makers.size())) {
  for (std::size_t c = 0; c < show.characters.size(); ++c) {
    first_row.push_back(rows);
    for (int v = 0; v < show.characters[c].values; ++v) {
      character.push_back(static_cast<int>(c));
    }
    rows += show.characters[c].values;
  }
}

}  // namespace backmark::evidence
