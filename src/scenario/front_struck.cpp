#include <cmath>
#include <numbers>

#include "scenario/drawing.h"
#include "scenario/outline.h"

namespace backmark::scenario {
namespace {

using draw::Canvas;
using draw::Point;

constexpr double pi = std::numbers::pi;

void urchin(Graver& g) {
  const double rx = g.work().width / 2;
  const double ry = g.work().height / 2;
  g.plate(g.outline(), g.box(), 0.9);
  g.border();
  const double out = g.work().border == Border::none ? 0.9 : 0.8;
  for (int seam = 0; seam < 10; ++seam) {
    const double angle = 2 * pi * seam / 10 - pi / 2;
    g.groove(
        [&](Canvas& c) {
          c.move_to(at_angle(0.27 * rx, 0.27 * ry, angle));
          c.line_to(at_angle(out * rx, out * ry, angle));
        },
        0.26);
    for (int i = 0; i < 5; ++i) {
      const double reach = 0.36 + (out - 0.42) * i / 4;
      const double radius = (0.024 + 0.0075 * i) * rx;
      g.bead(at_angle(reach * rx, reach * ry, angle + 0.17), radius);
      g.bead(at_angle(reach * rx, reach * ry, angle + 0.46), radius);
    }
  }
  g.cabochon({0, 0}, 0.19 * rx, 0.19 * ry, g.work().stones[0]);
}

void plain_stone(Graver& g) {
  const double rx = g.work().width / 2;
  const double ry = g.work().height / 2;
  g.plate(g.outline(), g.box(), 1.1);
  g.border();
  const int beads = 22;
  for (int i = 0; i < beads; ++i) {
    g.bead(at_angle(0.735 * rx, 0.735 * ry, 2 * pi * i / beads), 0.045 * rx);
  }
  g.cabochon({0, 0}, 0.56 * rx, 0.58 * ry, g.work().stones[0]);
}

void rayed(Graver& g) {
  const double rx = g.work().width / 2;
  const double ry = g.work().height / 2;
  g.plate(g.outline(), g.box(), 0.9);
  g.border();
  const int rays = 44;
  for (int i = 0; i < rays; ++i) {
    const double angle = 2 * pi * (i + 0.06 * g.random().normal()) / rays;
    const bool tall = i % 2 == 0;
    g.groove(
        [&](Canvas& c) {
          c.move_to(at_angle(0.56 * rx, 0.56 * ry, angle));
          c.line_to(at_angle((tall ? 0.76 : 0.66) * rx, (tall ? 0.76 : 0.66) * ry, angle));
        },
        0.34);
    if (!tall) {
      const Point p = at_angle(0.74 * rx, 0.74 * ry, angle);
      g.groove(
          [&](Canvas& c) {
            c.new_subpath();
            c.arc(p, 0.055 * rx, angle - 1.7, angle + 1.7);
          },
          0.3);
    }
  }
  g.cabochon({0, 0}, 0.42 * rx, 0.44 * ry, g.work().stones[0]);
}

void herringbone(Graver& g) {
  const double w = g.work().width;
  const double h = g.work().height;
  g.plate(g.outline(), g.box(), 0.9);
  g.border();
  g.canvas().scoped([&] {
    trace(g.canvas(), Outline::plaque, 0.84 * w, 0.8 * h);
    g.canvas().clip();
    const double step = 1.25;
    const double column = 2.6;
    for (double x = -0.5 * w; x < 0.5 * w; x += 2 * column) {
      for (double y = -0.55 * h; y < 0.55 * h; y += step) {
        g.groove(
            [&](Canvas& c) {
              c.move_to({x, y + 1.5});
              c.line_to({x + column, y});
              c.line_to({x + 2 * column, y + 1.5});
            },
            0.24);
      }
    }
  });
  g.groove([&](Canvas& c) { trace(c, Outline::plaque, 0.84 * w, 0.8 * h); }, 0.26);
  const double rx = 0.2 * w;
  const double ry = 0.2 * h;
  g.laid([&](Canvas& c) { trace(c, Outline::plaque, 2.5 * rx, 2.6 * ry); },
         {-1.25 * rx, -1.3 * ry, 2.5 * rx, 2.6 * ry}, g.metal());
  g.slip(
      [&](Canvas& c) {
        c.rounded_rectangle({-rx, -ry, 2 * rx, 2 * ry}, 0.8);
      },
      {-rx, -ry, 2 * rx, 2 * ry}, g.work().stones[0]);
}

}  // namespace

void draw_struck(Graver& graver) {
  switch (graver.work().motif) {
    case Motif::urchin:
      urchin(graver);
      break;
    case Motif::rayed_field:
      rayed(graver);
      break;
    case Motif::herringbone:
      herringbone(graver);
      break;
    default:
      plain_stone(graver);
  }
}

}  // namespace backmark::scenario
