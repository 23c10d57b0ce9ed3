#include <algorithm>
#include <cmath>
#include <numbers>

#include "scenario/drawing.h"
#include "scenario/outline.h"

namespace backmark::scenario {
namespace {

using draw::Box;
using draw::Canvas;
using draw::Point;

constexpr double pi = std::numbers::pi;

// The second stone, or a dark ground that goes with the first.
Stone other(const Work& work, Stone otherwise) {
  return work.stones[1] != Stone::none ? work.stones[1] : otherwise;
}

void compass(Graver& g) {
  const double r = std::min(g.work().width, g.work().height) / 2;
  g.plate(g.outline(), g.box(), 0.9);
  g.border();
  const double field = g.work().border == Border::none ? 0.86 : 0.78;
  const Box box{-field * r, -field * r, 2 * field * r, 2 * field * r};
  g.sunk(
      [&](Canvas& c) {
        c.circle({0, 0}, field * r);
      },
      box, slip_paint(g.work().stones[0], box));
  const auto point = [&](double angle, double reach, double waist) {
    const Point tip = at_angle(reach * r, reach * r, angle);
    for (const double side : {-1.0, 1.0}) {
      const Point flank = at_angle(waist * r, waist * r, angle + side * pi / 4);
      const Tracing half = [&](Canvas& c) { c.polygon({{0, 0}, flank, tip}); };
      if (side < 0) {
        g.laid(half, {-r / 2, -r / 2, r, r}, g.metal());
      } else {
        g.slip(half,
               {std::min(0.0, tip.x), std::min(0.0, tip.y), std::abs(tip.x) + 1,
                std::abs(tip.y) + 1},
               other(g.work(), Stone::bone));
      }
    }
  };
  for (int k = 0; k < 4; ++k) {
    point(pi / 4 + k * pi / 2, 0.5 * field / 0.78, 0.17);
  }
  for (int k = 0; k < 4; ++k) {
    point(k * pi / 2, 0.72 * field / 0.78, 0.2);
  }
  for (int k = 0; k < 32; ++k) {
    const double angle = 2 * pi * k / 32;
    g.canvas().move_to(at_angle(0.9 * field * r, 0.9 * field * r, angle));
    g.canvas().line_to(at_angle(0.96 * field * r, 0.96 * field * r, angle));
  }
  g.canvas().stroke(g.metal().light, {.width = 0.3});
  g.bead({0, 0}, 0.09 * r);
}

void scallop(Graver& g) {
  const double w = g.work().width;
  const double h = g.work().height;
  g.plate(g.outline(), g.box(), 1.0);
  const Point hinge{0, 0.3 * h};
  const auto fan = [&](double share, double reach) {
    const double angle = pi * (1.03 + 0.94 * share);
    return Point{reach * 0.5 * w * std::cos(angle),
                 hinge.y - 0.13 * h + reach * 0.62 * h * std::sin(angle)};
  };
  for (int i = 1; i < 9; ++i) {
    const double share = i / 9.0;
    g.groove(
        [&](Canvas& c) {
          c.move_to({0.12 * fan(share, 1).x, hinge.y - 0.02 * h});
          c.curve_to(fan(share, 0.28), fan(share, 0.6), fan(share, 0.96));
        },
        0.34);
  }
  for (int i = 0; i < 9; i += 2) {
    const double a = (i + 0.24) / 9;
    const double b = (i + 0.76) / 9;
    const Point corner = fan(a, 0.88);
    const Point low = fan(b, 0.42);
    const Box box{std::min(corner.x, low.x) - 1, std::min(corner.y, low.y) - 1,
                  std::abs(corner.x - low.x) + 2, std::abs(corner.y - low.y) + 2};
    g.slip(
        [&](Canvas& c) {
          c.move_to(fan(a, 0.42));
          c.line_to(fan(a, 0.86));
          c.curve_to(fan(a, 0.93), fan(b, 0.93), fan(b, 0.86));
          c.line_to(fan(b, 0.42));
          c.close();
        },
        box, g.work().stones[0]);
  }
  g.groove(
      [&](Canvas& c) {
        c.move_to(fan(0.02, 0.92));
        c.curve_to({-0.24 * w, -0.36 * h}, {0.24 * w, -0.36 * h}, fan(0.98, 0.92));
      },
      0.2);
  for (int i = -3; i <= 3; ++i) {
    if (i != 0) {
      g.bead({i * 0.074 * w, hinge.y + 0.075 * h}, 0.02 * w);
    }
  }
  g.cabochon(hinge, 0.072 * w, 0.06 * h, other(g.work(), Stone::jet));
}

void nautilus(Graver& g) {
  const double rx = g.work().width / 2;
  const double ry = g.work().height / 2;
  g.plate(g.outline(), g.box(), 0.8);
  g.border();
  const double out = g.work().border == Border::none ? 0.9 : 0.8;
  const auto on = [&](double t) {
    const double reach = out * std::exp(-0.105 * t);
    return at_angle(reach * rx, reach * ry, t + 2.7);
  };
  constexpr double turn = 2 * pi;
  for (int k = 0; k < 36; ++k) {
    const double a = 0.44 * k;
    const double b = a + 0.44;
    const Point p = on(a);
    const Point q = on(b + turn);
    const Box box{std::min(p.x, q.x) - 1, std::min(p.y, q.y) - 1, std::abs(p.x - q.x) + 2,
                  std::abs(p.y - q.y) + 2};
    const Tracing chamber = [&](Canvas& c) {
      c.move_to(on(a));
      c.curve_to(on(a + 0.15), on(a + 0.3), on(b));
      const Point bow{0.5 * (on(b).x + on(b + turn).x) + 0.12 * (on(b).x - on(a).x),
                      0.5 * (on(b).y + on(b + turn).y) + 0.12 * (on(b).y - on(a).y)};
      c.curve_to(bow, bow, on(b + turn));
      c.curve_to(on(a + turn + 0.3), on(a + turn + 0.15), on(a + turn));
      const Point back{0.5 * (on(a).x + on(a + turn).x) + 0.12 * (on(b).x - on(a).x),
                       0.5 * (on(a).y + on(a + turn).y) + 0.12 * (on(b).y - on(a).y)};
      c.curve_to(back, back, on(a));
      c.close();
    };
    if (k % 3 == 1) {
      g.slip(chamber, box, other(g.work(), Stone::mussel));
    } else {
      g.slip(chamber, box, k % 3 == 0 ? g.work().stones[0] : Stone::bone);
    }
  }
  g.groove([&](Canvas& c) { c.ellipse({0, 0}, (out + 0.03) * rx, (out + 0.03) * ry); }, 0.3);
  g.bead({0.02 * rx, 0}, 0.045 * rx);
}

void lighthouse(Graver& g) {
  const double w = g.work().width;
  const double h = g.work().height;
  g.plate(g.outline(), g.box(), 0.9);
  g.border();
  const Box field{-0.38 * w, -0.41 * h, 0.76 * w, 0.82 * h};
  g.sunk([&](Canvas& c) { trace(c, Outline::plaque, field.width, field.height); }, field,
         slip_paint(g.work().stones[0], field));
  for (const double side : {-1.0, 1.0}) {
    const double x = side * 0.05 * w;
    const double far = side * 0.33 * w;
    g.slip(
        [&](Canvas& c) {
          c.polygon({{x, -0.22 * h}, {far, -0.3 * h}, {far, -0.17 * h}});
        },
        {std::min(x, far), -0.3 * h, 0.28 * w, 0.13 * h}, Stone::amber);
  }
  const Tracing tower = [&](Canvas& c) {
    c.polygon({{-0.075 * w, 0.24 * h},
               {-0.048 * w, -0.16 * h},
               {0.048 * w, -0.16 * h},
               {0.075 * w, 0.24 * h}});
  };
  g.slip(tower, {-0.08 * w, -0.16 * h, 0.16 * w, 0.4 * h}, other(g.work(), Stone::bone));
  for (const double y : {-0.06, 0.05, 0.16}) {
    g.canvas().line({-0.062 * w, y * h}, {0.062 * w, y * h}, g.metal().dark.with_alpha(0.55),
                    {.width = 0.5});
  }
  g.laid(
      [&](Canvas& c) {
        c.polygon({{-0.06 * w, -0.16 * h},
                   {-0.05 * w, -0.25 * h},
                   {0, -0.31 * h},
                   {0.05 * w, -0.25 * h},
                   {0.06 * w, -0.16 * h}});
      },
      {-0.06 * w, -0.31 * h, 0.12 * w, 0.15 * h}, g.metal());
  for (int row = 0; row < 3; ++row) {
    g.wire(
        [&](Canvas& c) {
          const double y = (0.265 + 0.052 * row) * h;
          c.move_to({-0.33 * w, y});
          for (int k = 0; k < 6; ++k) {
            const double x = (-0.33 + 0.11 * k) * w;
            c.curve_to({x + 0.03 * w, y - 0.03 * h}, {x + 0.08 * w, y + 0.03 * h},
                       {x + 0.11 * w, y});
          }
        },
        0.6, g.metal());
  }
}

void channels(Graver& g) {
  const double w = g.work().width;
  const double h = g.work().height;
  g.plate(g.outline(), g.box(), 1.0);
  g.border();
  g.canvas().scoped([&] {
    g.outline(0.85)(g.canvas());
    g.canvas().clip();
    const int rows = 6;
    for (int row = 0; row < rows; ++row) {
      const double top = -0.43 * h + row * 0.145 * h;
      const double lean = (row % 2 == 0 ? 0.06 : -0.06) * w;
      const int across = row < 4 ? 4 : 3;
      for (int k = -1; k <= across; ++k) {
        const double x = -0.43 * w + k * 0.86 * w / across;
        const double step = 0.86 * w / across;
        const std::array<Stone, 5> order{g.work().stones[0], g.work().stones[1],
                                         g.work().stones[2], Stone::bone, g.work().stones[1]};
        const Stone stone = order[static_cast<std::size_t>((k + 1 + 2 * row) % 5)];
        g.slip(
            [&](Canvas& c) {
              c.polygon({{x + lean + 0.3, top + 0.35},
                         {x + step + lean - 0.3, top + 0.35},
                         {x + step - lean - 0.3, top + 0.145 * h - 0.35},
                         {x - lean + 0.3, top + 0.145 * h - 0.35}});
            },
            {x - std::abs(lean), top, step + 2 * std::abs(lean), 0.145 * h},
            stone == Stone::none ? Stone::slate : stone);
      }
    }
  });
  g.groove(g.outline(0.85), 0.34);
}

}  // namespace

void draw_inlaid(Graver& graver) {
  switch (graver.work().motif) {
    case Motif::compass:
      compass(graver);
      break;
    case Motif::scallop:
      scallop(graver);
      break;
    case Motif::nautilus:
      nautilus(graver);
      break;
    case Motif::lighthouse:
      lighthouse(graver);
      break;
    default:
      channels(graver);
  }
}

}  // namespace backmark::scenario
