// The calibration as steps to be counted in twenties: for the book's note on method and for
// `calibrate`.
#pragma once

#include <string>

#include "base/result.h"
#include "draw/canvas.h"
#include "draw/fonts.h"
#include "model/calibration.h"

namespace backmark::press {

inline constexpr draw::Size calibration_plot_size{118, 84};  // mm

// Across: said, of 20. Up: came true, of 20. At left the spans of years: a stair in ink over a
// dashed perfect one; the tint is where honest odds would fall 95 times in 100 with so many
// lots. The step of 16 in 20 is filled and its beads can be counted. At right first names: a
// dot for a tenth of the odds with its own 95 in 100 and the count of pieces. `corner` is the
// top left; the size is calibration_plot_size.
void draw_calibration(draw::Canvas& canvas,
                      const draw::Fonts& fonts,
                      const model::Calibration& calibration,
                      draw::Point corner);

// On a sheet of its own with a margin of 6 mm.
Result<std::string> calibration_svg(const draw::Fonts& fonts,
                                    const model::Calibration& calibration);
Result<std::string> calibration_pdf(const draw::Fonts& fonts,
                                    const model::Calibration& calibration);

}  // namespace backmark::press
