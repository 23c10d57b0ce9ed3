// The strokes that ornaments are drawn with: plates, grooves, beads, stones, wire.
#pragma once

#include <functional>

#include "base/random.h"
#include "draw/canvas.h"
#include "scenario/palette.h"
#include "scenario/work.h"

namespace backmark::scenario {

// Adds a path; may be called several times.
using Tracing = std::function<void(draw::Canvas&)>;

// Draws one piece; millimetres, the origin in the middle of the ornament.
class Graver {
 public:
  Graver(draw::Canvas& canvas, const Work& work);

  draw::Canvas& canvas() { return canvas_; }
  const Work& work() const { return work_; }
  const Tones& metal() const { return metal_; }
  Random& random() { return random_; }

  // The piece's own outline at a share of its size.
  Tracing outline(double share = 1) const;
  draw::Box box(double share = 1) const;

  // A plate with an edge and a bevel of so many millimetres inside its outline.
  void plate(const Tracing& path, const draw::Box& box, double bevel_mm);
  // A floor cut into the plate, filled and shaded at its walls.
  void sunk(const Tracing& path, const draw::Box& box, const draw::Paint& floor);
  // Metal soldered on top, with its own small shadow.
  void laid(const Tracing& path, const draw::Box& box, const Tones& tones);
  // A slip of stone let in flush.
  void slip(const Tracing& path, const draw::Box& box, Stone stone);
  // A line cut into metal.
  void groove(const Tracing& path, double width);
  void bead(draw::Point centre, double radius);
  // A domed stone in its bezel.
  void cabochon(draw::Point centre, double rx, double ry, Stone stone);
  // Twisted wire along an ellipse or along the piece's outline at a share of its size.
  void rope(draw::Point centre, double rx, double ry);
  // A wire of round section along a path.
  void wire(const Tracing& path, double width, const Tones& tones);
  // The border that the piece has, inside its outline.
  void border();
  // Small age: scratches and tarnish within the outline; `strength` 0 to 1.
  void wear(double strength);

 private:
  void veins(Stone stone, const draw::Box& box);
  // Twisted wire, granules or punches along a path that is no ellipse.
  void border_along(const Tracing& path);
  void saw_teeth(draw::Point centre, double rx, double ry);

  draw::Canvas& canvas_;
  const Work& work_;
  Tones metal_;
  Random random_;
};

// A point at an angle (radians, clockwise from the right) on an ellipse round the origin.
draw::Point at_angle(double rx, double ry, double angle);

}  // namespace backmark::scenario
