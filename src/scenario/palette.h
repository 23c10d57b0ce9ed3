// Colours of metals, stones and cords, lit from the upper left.
#pragma once

#include <array>

#include "draw/canvas.h"
#include "scenario/work.h"

namespace backmark::scenario {

// From the brightest glint to the line drawn round the thing.
struct Tones {
  draw::Colour glint, light, middle, shade, dark, line;
};
Tones tones_of(Metal metal);
inline constexpr Metal trade_steel = Metal::nickel_silver;  // of clips and buttons

struct StoneTones {
  draw::Colour light, middle, dark, vein;
};
StoneTones tones_of(Stone stone);

struct CordTones {
  draw::Colour dark, middle, light;
};
CordTones tones_of(CordColour colour);

// A sheet of metal over a box: bands of reflected light across the diagonal.
draw::Paint sheet_paint(const Tones& tones, const draw::Box& box);
// A rod or tube standing upright between two sides.
draw::Paint rod_paint(const Tones& tones, double left, double right);
draw::Paint bead_paint(const Tones& tones, draw::Point centre, double radius);
// Light at the upper left, dark at the lower right, clear between; `strength` 0 to 1.
draw::Paint bevel_paint(const draw::Box& box, double strength);
// The reverse, for what is sunk.
draw::Paint hollow_paint(const draw::Box& box, double strength);
// A flat slip and a domed cut of the stone.
draw::Paint slip_paint(Stone stone, const draw::Box& box);
draw::Paint dome_paint(Stone stone, draw::Point centre, double radius);

}  // namespace backmark::scenario
