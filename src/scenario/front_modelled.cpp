#include <cmath>
#include <numbers>

#include "scenario/drawing.h"

namespace backmark::scenario {
namespace {

using draw::Canvas;
using draw::Point;

constexpr double pi = std::numbers::pi;

void herring(Graver& g) {
  const double w = g.work().width;
  const double h = g.work().height;
  g.plate(g.outline(), g.box(), 0.85);
  for (int column = 0; column < 9; ++column) {
    const double x = -0.2 * w + column * 0.055 * w;
    const double half = (0.36 - 0.03 * column) * h;
    for (double y = -half + (column % 2 == 0 ? 0.0 : 0.05 * h); y < half - 0.02 * h;
         y += 0.1 * h) {
      g.groove(
          [&](Canvas& c) {
            c.move_to({x, y});
            c.curve_to({x + 0.05 * w, y}, {x + 0.05 * w, y + 0.1 * h}, {x, y + 0.1 * h});
          },
          0.2);
    }
  }
  g.groove(
      [&](Canvas& c) {
        c.move_to({-0.26 * w, -0.37 * h});
        c.curve_to({-0.18 * w, -0.15 * h}, {-0.18 * w, 0.15 * h}, {-0.26 * w, 0.37 * h});
      },
      0.36);
  for (int k = -3; k <= 3; ++k) {
    g.groove(
        [&](Canvas& c) {
          c.move_to({0.35 * w, k * 0.022 * h});
          c.line_to({0.475 * w - 0.006 * w * std::abs(k), k * 0.115 * h});
        },
        0.2);
  }
  g.groove(
      [&](Canvas& c) {
        c.move_to({-0.49 * w, 0.03 * h});
        c.curve_to({-0.46 * w, 0.1 * h}, {-0.42 * w, 0.12 * h}, {-0.37 * w, 0.1 * h});
      },
      0.3);
  g.cabochon({-0.34 * w, -0.09 * h}, 0.034 * w, 0.034 * w, g.work().stones[0]);
}

void whale_tail(Graver& g) {
  const double w = g.work().width;
  const double h = g.work().height;
  g.plate(g.outline(), g.box(), 1.3);
  for (const double side : {-1.0, 1.0}) {
    for (int i = 0; i < 6; ++i) {
      g.groove(
          [&](Canvas& c) {
            c.move_to({side * w * (0.03 + 0.014 * i), h * (-0.2 + 0.024 * i)});
            c.curve_to({side * w * (0.1 + 0.012 * i), h * (-0.34 + 0.025 * i)},
                       {side * w * (0.2 + 0.014 * i), h * (-0.42 + 0.03 * i)},
                       {side * w * (0.34 + 0.014 * i), h * (-0.4 + 0.034 * i)});
          },
          0.24);
    }
  }
  g.groove(
      [&](Canvas& c) {
        c.move_to({0, -0.22 * h});
        c.line_to({0, 0.4 * h});
      },
      0.3);
  g.cabochon({0, 0.06 * h}, 0.06 * w, 0.13 * h, g.work().stones[0]);
}

void crescent(Graver& g) {
  const double w = g.work().width;
  const double h = g.work().height;
  g.plate(g.outline(), g.box(), 1.0);
  // The belly's middle line, from horn to horn.
  const auto belly = [&](double angle, double reach) {
    return Point{reach * 0.5 * w * std::cos(angle),
                 0.06 * h + reach * 0.47 * h * std::sin(angle)};
  };
  for (int i = -3; i <= 3; ++i) {
    const double angle = pi / 2 + 0.42 * i;
    const double r = (0.052 - 0.006 * std::abs(i)) * w;
    g.cabochon(belly(angle, 0.74 + 0.02 * std::abs(i)), r, r, g.work().stones[0]);
  }
  for (int i = 0; i < 26; ++i) {
    const double angle = pi * (-0.02 + 1.04 * i / 25);
    g.bead(belly(angle, 0.93), 0.36);
  }
}

void tern(Graver& g) {
  const double w = g.work().width;
  const double h = g.work().height;
  g.plate(g.outline(), g.box(), 0.85);
  for (const double side : {-1.0, 1.0}) {
    for (int i = 0; i < 7; ++i) {
      g.groove(
          [&](Canvas& c) {
            c.move_to({side * w * (0.085 + 0.025 * i), h * (0.06 - 0.03 * i)});
            c.curve_to({side * w * (0.15 + 0.035 * i), h * (-0.06 - 0.02 * i)},
                       {side * w * (0.2 + 0.036 * i), h * (-0.15 - 0.018 * i)},
                       {side * w * (0.25 + 0.034 * i), h * (-0.24 - 0.004 * i)});
          },
          0.24);
    }
    for (int i = 0; i < 3; ++i) {
      g.groove(
          [&](Canvas& c) {
            c.move_to({side * w * (0.03 + 0.012 * i), h * 0.18});
            c.line_to({side * w * (0.06 + 0.04 * i), h * (0.3 + 0.04 * i)});
          },
          0.22);
    }
  }
  g.cabochon({0.004 * w, -0.02 * h}, 0.05 * w, 0.13 * h, g.work().stones[0]);
  g.canvas().circle({0.022 * w, -0.37 * h}, 0.45);
  g.canvas().fill(g.metal().line);
}

void knot(Graver& g) {
  const double rx = g.work().width / 2;
  const double ry = g.work().height / 2;
  const double wire = 0.2 * rx;
  // Three rings: two tall ones leaning on each other, held by the outer round.
  g.wire([&](Canvas& c) { c.ellipse({0, 0}, rx - wire / 2, ry - wire / 2); }, wire, g.metal());
  for (const double turn : {0.0, pi / 3, 2 * pi / 3}) {
    g.canvas().scoped([&] {
      g.canvas().rotate(turn);
      g.wire(
          [&](Canvas& c) {
            c.ellipse({0, 0}, 0.74 * rx, 0.36 * ry);
          },
          0.85 * wire, g.metal());
    });
  }
  // The rings pass over one another by turns.
  g.canvas().scoped([&] {
    g.canvas().rotate(0);
    g.wire(
        [&](Canvas& c) {
          c.new_subpath();
          c.move_to({-0.5 * rx, -0.265 * ry});
          c.curve_to({-0.25 * rx, -0.37 * ry}, {0.05 * rx, -0.38 * ry}, {0.3 * rx, -0.33 * ry});
        },
        0.85 * wire, g.metal());
  });
  g.cabochon({0, 0}, 0.2 * rx, 0.2 * ry, g.work().stones[0]);
}

void star(Graver& g) {
  const double r = std::min(g.work().width, g.work().height) / 2;
  g.plate(g.outline(), g.box(), 0.5);
  // Each point falls away on both sides of its ridge.
  for (int k = 0; k < 8; ++k) {
    const double angle = -pi / 2 + k * pi / 4;
    const Point tip =
        at_angle((k % 2 == 0 ? 0.97 : 0.65) * r, (k % 2 == 0 ? 0.97 : 0.65) * r, angle);
    for (const double side : {-1.0, 1.0}) {
      const Point valley = at_angle(0.335 * r, 0.335 * r, angle + side * pi / 8);
      const double facing = std::cos(angle + side * pi / 2 - 1.25 * pi);
      g.canvas().polygon({{0, 0}, valley, tip});
      g.canvas().fill(facing > 0 ? draw::Colour{1, 1, 1, 0.55 * facing}
                                 : draw::Colour{0, 0, 0, -0.5 * facing});
    }
    g.canvas().line({0, 0}, tip, g.metal().glint.with_alpha(0.7), {.width = 0.16});
  }
  for (int k = 0; k < 24; ++k) {
    g.bead(at_angle(0.32 * r, 0.32 * r, 2 * pi * k / 24), 0.028 * r);
  }
  g.cabochon({0, 0}, 0.235 * r, 0.235 * r, g.work().stones[0]);
}

}  // namespace

void draw_modelled(Graver& graver) {
  switch (graver.work().motif) {
    case Motif::herring:
      herring(graver);
      break;
    case Motif::whale_tail:
      whale_tail(graver);
      break;
    case Motif::crescent:
      crescent(graver);
      break;
    case Motif::tern:
      tern(graver);
      break;
    case Motif::knot:
      knot(graver);
      break;
    default:
      star(graver);
  }
}

void draw_front(Graver& graver) {
  switch (graver.work().motif) {
    case Motif::urchin:
    case Motif::cabochon:
    case Motif::rayed_field:
    case Motif::herringbone:
      draw_struck(graver);
      break;
    case Motif::compass:
    case Motif::scallop:
    case Motif::nautilus:
    case Motif::lighthouse:
    case Motif::channel_shield:
      draw_inlaid(graver);
      break;
    case Motif::boat:
    case Motif::net_lozenge:
    case Motif::moon_water:
      draw_laid(graver);
      break;
    default:
      draw_modelled(graver);
  }
  if (graver.work().outline != Outline::ring) {
    graver.wear(0.5);
  }
}

}  // namespace backmark::scenario
