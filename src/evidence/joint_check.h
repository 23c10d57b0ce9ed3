// What must hold of a show before chains may run on it.
#pragma once

#include <optional>

#include "base/result.h"
#include "evidence/joint_show.h"

namespace backmark::evidence {

// The first thing wrong, or nothing. Pieces and makers are named by their place, counted
// from 1.
std::optional<Problem> check_joint_show(const JointShow& show, const JointSettings& settings);

}  // namespace backmark::evidence
