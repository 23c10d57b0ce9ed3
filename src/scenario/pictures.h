// The demo show's photographs, drawn: cut-outs lit from the upper left, true to the record.
#pragma once

#include "base/file.h"
#include "base/result.h"
#include "draw/picture.h"
#include "scenario/scenario.h"

namespace backmark::scenario {

// Draws one, width_px × height_px. Fronts, backs and tips lie on nothing; a mark keeps its
// ground.
draw::Picture picture(const Scenario& scenario, const Shot& shot);

// Draws and writes all shots below the folder, which is made if missing, on so many threads (at
// least 1); the files do not depend on the number. Problems: io.
Result<Done> write_photographs(const Scenario& scenario, const Path& folder, unsigned threads);

}  // namespace backmark::scenario
