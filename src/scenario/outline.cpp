#include "scenario/outline.h"

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace backmark::scenario {
namespace {

using draw::Canvas;
using draw::Point;

constexpr double pi = std::numbers::pi;

void scallop(Canvas& c) {
  // Nine lobes on a fan, two ears, a hinge.
  const Point hinge{0, 0.34};
  const auto rim = [&](double share, double reach) {
    const double angle = pi * (1.03 + 0.94 * share);
    return Point{reach * 0.5 * std::cos(angle),
                 hinge.y - 0.17 + reach * 0.66 * std::sin(angle)};
  };
  c.move_to({-0.15, 0.5});
  c.line_to({-0.2, 0.41});
  c.line_to({-0.33, 0.38});
  c.line_to({-0.3, 0.28});
  c.line_to(rim(0, 0.97));
  constexpr int lobes = 9;
  for (int i = 0; i < lobes; ++i) {
    const double a = static_cast<double>(i) / lobes;
    const double b = static_cast<double>(i + 1) / lobes;
    c.curve_to(rim(a + 0.25 / lobes, 1.07), rim(b - 0.25 / lobes, 1.07), rim(b, 0.97));
  }
  c.line_to({0.3, 0.28});
  c.line_to({0.33, 0.38});
  c.line_to({0.2, 0.41});
  c.line_to({0.15, 0.5});
  c.close();
}

void fish(Canvas& c) {
  c.move_to({-0.5, 0.02});
  c.curve_to({-0.42, -0.28}, {-0.16, -0.52}, {0.1, -0.4});
  c.line_to({0.0, -0.5});
  c.curve_to({0.06, -0.5}, {0.12, -0.46}, {0.16, -0.36});
  c.curve_to({0.24, -0.28}, {0.29, -0.15}, {0.34, -0.09});
  c.curve_to({0.4, -0.14}, {0.45, -0.3}, {0.5, -0.45});
  c.curve_to({0.47, -0.18}, {0.45, -0.08}, {0.44, 0.0});
  c.curve_to({0.45, 0.08}, {0.47, 0.18}, {0.5, 0.45});
  c.curve_to({0.45, 0.3}, {0.4, 0.14}, {0.34, 0.09});
  c.curve_to({0.28, 0.2}, {0.2, 0.32}, {0.08, 0.4});
  c.line_to({0.1, 0.5});
  c.curve_to({0.03, 0.5}, {-0.04, 0.48}, {-0.08, 0.44});
  c.curve_to({-0.28, 0.44}, {-0.42, 0.25}, {-0.5, 0.02});
  c.close();
}

void tail(Canvas& c) {
  c.move_to({0, 0.5});
  c.curve_to({-0.09, 0.42}, {-0.075, 0.16}, {-0.13, 0.0});
  c.curve_to({-0.19, -0.14}, {-0.37, -0.12}, {-0.5, -0.22});
  c.curve_to({-0.47, -0.42}, {-0.3, -0.52}, {-0.17, -0.47});
  c.curve_to({-0.08, -0.43}, {-0.03, -0.37}, {0, -0.29});
  c.curve_to({0.03, -0.37}, {0.08, -0.43}, {0.17, -0.47});
  c.curve_to({0.3, -0.52}, {0.47, -0.42}, {0.5, -0.22});
  c.curve_to({0.37, -0.12}, {0.19, -0.14}, {0.13, 0.0});
  c.curve_to({0.075, 0.16}, {0.09, 0.42}, {0, 0.5});
  c.close();
}

void crescent(Canvas& c) {
  c.arc({0, 0.02}, 0.5, -0.3 * pi, 1.3 * pi);
  c.curve_to({-0.36, -0.12}, {-0.28, 0.2}, {0, 0.21});
  c.curve_to({0.28, 0.2}, {0.36, -0.12}, {0.294, -0.385});
  c.close();
}

void lozenge(Canvas& c) {
  c.move_to({0, -0.5});
  c.curve_to({0.1, -0.32}, {0.32, -0.12}, {0.5, 0});
  c.curve_to({0.32, 0.12}, {0.1, 0.32}, {0, 0.5});
  c.curve_to({-0.1, 0.32}, {-0.32, 0.12}, {-0.5, 0});
  c.curve_to({-0.32, -0.12}, {-0.1, -0.32}, {0, -0.5});
  c.close();
}

void tern(Canvas& c) {
  c.move_to({-0.5, -0.26});
  c.curve_to({-0.32, -0.42}, {-0.16, -0.32}, {-0.07, -0.1});
  c.curve_to({-0.06, -0.26}, {-0.03, -0.42}, {0.015, -0.5});
  c.curve_to({0.06, -0.42}, {0.07, -0.26}, {0.075, -0.1});
  c.curve_to({0.17, -0.32}, {0.33, -0.42}, {0.5, -0.26});
  c.curve_to({0.37, -0.24}, {0.28, 0.02}, {0.1, 0.12});
  c.curve_to({0.12, 0.26}, {0.17, 0.38}, {0.22, 0.5});
  c.line_to({0.01, 0.24});
  c.line_to({-0.2, 0.5});
  c.curve_to({-0.15, 0.38}, {-0.1, 0.26}, {-0.08, 0.12});
  c.curve_to({-0.26, 0.02}, {-0.36, -0.24}, {-0.5, -0.26});
  c.close();
}

void star(Canvas& c) {
  for (int k = 0; k < 16; ++k) {
    const double angle = -pi / 2 + k * pi / 8;
    const double reach = k % 2 == 1 ? 0.17 : (k % 4 == 0 ? 0.5 : 0.34);
    const Point p{reach * std::cos(angle), reach * std::sin(angle)};
    k == 0 ? c.move_to(p) : c.line_to(p);
  }
  c.close();
}

void shield(Canvas& c) {
  c.move_to({-0.36, -0.5});
  c.line_to({0.36, -0.5});
  c.line_to({0.5, -0.42});
  c.line_to({0.43, 0.24});
  c.line_to({0, 0.5});
  c.line_to({-0.43, 0.24});
  c.line_to({-0.5, -0.42});
  c.close();
}

void plaque(Canvas& c, double aspect) {
  // Corners cut at the same length both ways: `aspect` is width / height.
  const double cx = 0.12;
  const double cy = 0.12 * aspect;
  c.polygon({{-0.5 + cx, -0.5},
             {0.5 - cx, -0.5},
             {0.5, -0.5 + cy},
             {0.5, 0.5 - cy},
             {0.5 - cx, 0.5},
             {-0.5 + cx, 0.5},
             {-0.5, 0.5 - cy},
             {-0.5, -0.5 + cy}});
}

void unit_path(Canvas& c, Outline outline, double aspect) {
  switch (outline) {
    case Outline::disc:
    case Outline::oval:
    case Outline::ring:
      c.circle({0, 0}, 0.5);
      break;
    case Outline::scallop:
      scallop(c);
      break;
    case Outline::fish:
      fish(c);
      break;
    case Outline::tail:
      tail(c);
      break;
    case Outline::crescent:
      crescent(c);
      break;
    case Outline::lozenge:
      lozenge(c);
      break;
    case Outline::plaque:
      plaque(c, aspect);
      break;
    case Outline::tern:
      tern(c);
      break;
    case Outline::star:
      star(c);
      break;
    case Outline::shield:
      shield(c);
      break;
  }
}

draw::Box unit_box(Outline outline) {
  draw::Canvas canvas = draw::Canvas::picture({1, 1}, 1);
  // Enlarged, so that the flattening of curves does not show in the box.
  canvas.scale(1000);
  unit_path(canvas, outline, 1);
  return canvas.path_box();
}

}  // namespace

void trace(draw::Canvas& canvas, Outline outline, double width, double height) {
  static const auto boxes = [] {
    std::array<draw::Box, 12> all;
    for (std::size_t i = 0; i < all.size(); ++i) {
      all[i] = unit_box(static_cast<Outline>(i));
    }
    return all;
  }();
  const draw::Box& box = boxes[static_cast<std::size_t>(outline)];
  // The path outlives the restored transform, so that strokes keep their width.
  canvas.save();
  canvas.scale(width / box.width, height / box.height);
  canvas.translate(-box.centre().x, -box.centre().y);
  unit_path(canvas, outline, width / height);
  canvas.restore();
}

}  // namespace backmark::scenario
