// Pieces as lines to draw on: the rim of the cut-out and, paler, the edges of light and dark
// within it.
#pragma once

#include "draw/canvas.h"
#include "press/job.h"

namespace backmark::press {

// Draws the photograph's outline with the middle of the picture at `centre`, `ratio` mm of
// paper for a mm of piece. Without a known scale it fills 0.8 of `room`. A photograph without a
// cut-out (no transparent part) has its frame as outline. Gives whether the scale is true.
// A picture that cannot be read becomes a finding, and nothing is drawn.
bool show_outline(draw::Canvas& canvas,
                  const PressJob& job,
                  const model::Photograph& photograph,
                  draw::Point centre,
                  draw::Size room,
                  double ratio,
                  Problems& findings);

}  // namespace backmark::press
