// The outlines that ornaments are sawn to.
#pragma once

#include "draw/canvas.h"
#include "scenario/work.h"

namespace backmark::scenario {

// Adds the closed path of an outline whose box is exactly width × height round the origin.
void trace(draw::Canvas& canvas, Outline outline, double width, double height);

}  // namespace backmark::scenario
