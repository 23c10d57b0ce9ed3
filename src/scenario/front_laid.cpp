#include <algorithm>
#include <cmath>
#include <numbers>

#include "scenario/drawing.h"

namespace backmark::scenario {
namespace {

using draw::Box;
using draw::Canvas;

// The blackened ground under a pierced sheet.
const draw::Colour ground = draw::Colour::hex(0x23282b);

double field_share(const Work& work) {
  return work.border == Border::none ? 0.88 : 0.79;
}

// A closed band of wave from side to side, its crest at y.
Tracing wave_band(double half, double y, double thick, double swell, double shift) {
  return [=](Canvas& c) {
    const int waves = 4;
    const double step = 2 * half / waves;
    c.move_to({-half, y});
    for (int k = 0; k < waves; ++k) {
      const double x = -half + k * step;
      c.curve_to({x + 0.3 * step + shift, y - swell}, {x + 0.7 * step + shift, y + swell},
                 {x + step, y});
    }
    c.line_to({half, y + thick});
    for (int k = waves - 1; k >= 0; --k) {
      const double x = -half + k * step;
      c.curve_to({x + 0.7 * step + shift, y + thick + swell},
                 {x + 0.3 * step + shift, y + thick - swell}, {x, y + thick});
    }
    c.close();
  };
}

void boat(Graver& g) {
  const double r = std::min(g.work().width, g.work().height) / 2;
  g.plate(g.outline(), g.box(), 0.9);
  g.border();
  const double f = field_share(g.work()) * r;
  const Box field{-f, -f, 2 * f, 2 * f};
  const Stone second = g.work().stones[1] != Stone::none ? g.work().stones[1] : Stone::bone;
  g.sunk([&](Canvas& c) { c.circle({0, 0}, f); }, field, slip_paint(Stone::slate, field));
  g.canvas().line({0, -0.86 * f}, {0, 0.2 * f}, g.metal().light, {.width = 0.7});
  g.slip(
      [&](Canvas& c) {
        c.move_to({-0.06 * f, -0.8 * f});
        c.line_to({-0.06 * f, 0.13 * f});
        c.line_to({-0.68 * f, 0.13 * f});
        c.curve_to({-0.5 * f, -0.2 * f}, {-0.28 * f, -0.55 * f}, {-0.06 * f, -0.8 * f});
        c.close();
      },
      {-0.68 * f, -0.8 * f, 0.62 * f, 0.93 * f}, g.work().stones[0]);
  g.slip(
      [&](Canvas& c) {
        c.move_to({0.07 * f, -0.62 * f});
        c.curve_to({0.36 * f, -0.4 * f}, {0.52 * f, -0.12 * f}, {0.57 * f, 0.13 * f});
        c.line_to({0.07 * f, 0.13 * f});
        c.close();
      },
      {0.07 * f, -0.62 * f, 0.5 * f, 0.75 * f}, second);
  g.laid(
      [&](Canvas& c) {
        c.move_to({-0.76 * f, 0.22 * f});
        c.line_to({0.74 * f, 0.22 * f});
        c.curve_to({0.62 * f, 0.42 * f}, {0.46 * f, 0.54 * f}, {0.25 * f, 0.55 * f});
        c.line_to({-0.36 * f, 0.55 * f});
        c.curve_to({-0.56 * f, 0.52 * f}, {-0.68 * f, 0.4 * f}, {-0.76 * f, 0.22 * f});
        c.close();
      },
      {-0.76 * f, 0.22 * f, 1.5 * f, 0.33 * f}, g.metal());
  g.canvas().scoped([&] {
    g.canvas().circle({0, 0}, f);
    g.canvas().clip();
    g.laid(wave_band(1.05 * f, 0.6 * f, 0.09 * f, 0.07 * f, 0), {-f, 0.5 * f, 2 * f, 0.3 * f},
           g.metal());
    g.laid(wave_band(1.05 * f, 0.78 * f, 0.08 * f, 0.07 * f, 1.2),
           {-f, 0.7 * f, 2 * f, 0.3 * f}, g.metal());
  });
}

void net(Graver& g) {
  const double w = g.work().width;
  const double h = g.work().height;
  g.plate(g.outline(), g.box(), 0.9);
  g.border();
  const Box field{-0.4 * w, -0.4 * h, 0.8 * w, 0.8 * h};
  g.sunk(g.outline(0.78), field, ground);
  g.canvas().scoped([&] {
    g.outline(0.78)(g.canvas());
    g.canvas().clip();
    const double mesh = 0.17 * w;
    for (const double lean : {-1.0, 1.0}) {
      for (int k = -6; k <= 6; ++k) {
        g.wire(
            [&](Canvas& c) {
              const double x = k * mesh;
              c.move_to({x - lean * 0.4 * w, -0.5 * h});
              c.curve_to({x - lean * 0.1 * w, -0.2 * h}, {x + lean * 0.1 * w, 0.2 * h},
                         {x + lean * 0.4 * w, 0.5 * h});
            },
            0.85, g.metal());
      }
    }
  });
  const double r = 0.085 * w;
  g.cabochon({0, -0.29 * h}, r, r, g.work().stones[0]);
  g.cabochon({0, 0.29 * h}, r, r, g.work().stones[0]);
}

void moon(Graver& g) {
  const double rx = g.work().width / 2;
  const double ry = g.work().height / 2;
  g.plate(g.outline(), g.box(), 0.9);
  g.border();
  const double fx = field_share(g.work()) * rx;
  const double fy = field_share(g.work()) * ry;
  const Box field{-fx, -fy, 2 * fx, 2 * fy};
  g.sunk([&](Canvas& c) { c.ellipse({0, 0}, fx, fy); }, field, ground);
  g.canvas().scoped([&] {
    g.canvas().ellipse({0, 0}, fx, fy);
    g.canvas().clip();
    for (int row = 0; row < 5; ++row) {
      const double y = (-0.34 + 0.29 * row) * fy;
      g.laid(wave_band(1.1 * fx, y, 0.125 * fy, 0.24 * fy, 0.8 * (row % 2)),
             {-fx, y - 0.2 * fy, 2 * fx, 0.5 * fy}, g.metal());
    }
    const draw::Point centre{0.36 * fx, -0.5 * fy};
    const double r = 0.25 * fx;
    g.canvas().circle(centre, 1.22 * r);
    g.canvas().fill(ground);
    g.laid([&](Canvas& c) { c.circle(centre, r); }, {centre.x - r, centre.y - r, 2 * r, 2 * r},
           g.metal());
  });
}

}  // namespace

void draw_laid(Graver& graver) {
  switch (graver.work().motif) {
    case Motif::boat:
      boat(graver);
      break;
    case Motif::net_lozenge:
      net(graver);
      break;
    default:
      moon(graver);
  }
}

}  // namespace backmark::scenario
