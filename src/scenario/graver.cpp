#include "scenario/graver.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "scenario/extent.h"
#include "scenario/outline.h"

namespace backmark::scenario {
namespace {

using draw::Box;
using draw::Canvas;
using draw::Colour;
using draw::Point;
using draw::Stroke;

constexpr double pi = std::numbers::pi;
constexpr Colour black{0, 0, 0, 1};

}  // namespace

Point at_angle(double rx, double ry, double angle) {
  return {rx * std::cos(angle), ry * std::sin(angle)};
}

Graver::Graver(Canvas& canvas, const Work& work)
    : canvas_(canvas), work_(work), metal_(tones_of(work.metal)), random_(work.grain) {}

Tracing Graver::outline(double share) const {
  return [this, share](Canvas& c) {
    trace(c, work_.outline, work_.width * share, work_.height * share);
  };
}

Box Graver::box(double share) const {
  const Box full = ornament_box(work_);
  return {full.x * share, full.y * share, full.width * share, full.height * share};
}

void Graver::plate(const Tracing& path, const Box& box, double bevel_mm) {
  canvas_.scoped([&] {
    path(canvas_);
    canvas_.fill_keep(sheet_paint(metal_, box));
    canvas_.clip();
    path(canvas_);
    canvas_.stroke(bevel_paint(box, 0.55),
                   {.width = 3.4 * bevel_mm, .join = draw::Join::round});
    path(canvas_);
    canvas_.stroke(bevel_paint(box, 0.9), {.width = 1.7 * bevel_mm, .join = draw::Join::round});
    path(canvas_);
    canvas_.stroke(metal_.line.with_alpha(0.85), {.width = 0.36, .join = draw::Join::round});
  });
}

void Graver::sunk(const Tracing& path, const Box& box, const draw::Paint& floor) {
  const double wall = std::min(1.1, 0.1 * std::min(box.width, box.height));
  canvas_.scoped([&] {
    path(canvas_);
    canvas_.fill_keep(floor);
    canvas_.clip();
    path(canvas_);
    canvas_.stroke(hollow_paint(box, 0.5), {.width = 2 * wall});
    path(canvas_);
    canvas_.stroke(hollow_paint(box, 0.95), {.width = 0.8 * wall});
  });
  path(canvas_);
  canvas_.stroke(metal_.line.with_alpha(0.6), {.width = 0.18});
}

void Graver::laid(const Tracing& path, const Box& box, const Tones& tones) {
  canvas_.scoped([&] {
    canvas_.translate(0.22, 0.34);
    path(canvas_);
    canvas_.fill(black.with_alpha(0.5));
  });
  canvas_.scoped([&] {
    path(canvas_);
    canvas_.fill_keep(sheet_paint(tones, box));
    canvas_.clip();
    path(canvas_);
    canvas_.stroke(bevel_paint(box, 0.8), {.width = 0.7});
  });
  path(canvas_);
  canvas_.stroke(tones.line.with_alpha(0.75), {.width = 0.16});
}

void Graver::slip(const Tracing& path, const Box& box, Stone stone) {
  canvas_.scoped([&] {
    path(canvas_);
    canvas_.fill_keep(slip_paint(stone, box));
    canvas_.clip();
    veins(stone, box);
    path(canvas_);
    canvas_.stroke(black.with_alpha(0.45), {.width = 0.5});
    canvas_.line({box.x + 0.2 * box.width, box.y + 0.05 * box.height},
                 {box.x - 0.1 * box.width, box.y + 0.6 * box.height}, Colour{1, 1, 1, 0.3},
                 {.width = 0.16 * std::min(box.width, box.height)});
  });
  path(canvas_);
  canvas_.stroke(metal_.line.with_alpha(0.8), {.width = 0.2});
}

void Graver::groove(const Tracing& path, double width) {
  canvas_.scoped([&] {
    const double wall = std::min(0.6 * width, 0.13);
    canvas_.translate(wall, 1.15 * wall);
    path(canvas_);
    canvas_.stroke(metal_.glint.with_alpha(0.75),
                   {.width = width, .cap = draw::Cap::round, .join = draw::Join::round});
  });
  path(canvas_);
  canvas_.stroke(metal_.line.with_alpha(0.8),
                 {.width = width, .cap = draw::Cap::round, .join = draw::Join::round});
}

void Graver::bead(Point centre, double radius) {
  canvas_.circle({centre.x + 0.22 * radius, centre.y + 0.32 * radius}, 1.08 * radius);
  canvas_.fill(black.with_alpha(0.38));
  canvas_.circle(centre, radius);
  canvas_.fill(bead_paint(metal_, centre, radius));
}

void Graver::veins(Stone stone, const Box& box) {
  const StoneTones t = tones_of(stone);
  const double size = std::max(box.width, box.height);
  const bool banded = stone == Stone::agate || stone == Stone::slate ||
                      stone == Stone::driftwood || stone == Stone::horn ||
                      stone == Stone::feather || stone == Stone::mussel;
  const bool mottled = stone == Stone::turtle || stone == Stone::sodalite ||
                       stone == Stone::serpentine || stone == Stone::jasper;
  if (stone == Stone::jet || stone == Stone::ormer || stone == Stone::moon_glass) {
    return;
  }
  const int count = banded ? 9 : 6;
  for (int i = 0; i < count; ++i) {
    const double y = box.y + box.height * ((i + random_.uniform()) / count);
    const double x = box.x + box.width * random_.uniform();
    const double bow = (random_.uniform() - 0.5) * 0.3 * size;
    const Colour colour = (i % 2 == 0 ? t.vein : t.dark).with_alpha(banded ? 0.42 : 0.3);
    if (mottled && i % 3 != 0) {
      const double r = (0.1 + 0.16 * random_.uniform()) * size;
      const Colour cloud = i % 2 == 0 ? t.dark : t.light;
      canvas_.circle({x, y}, r);
      canvas_.fill(draw::RadialGradient{{x, y},
                                        0,
                                        {x, y},
                                        r,
                                        {{0, cloud.with_alpha(0.5)},
                                         {0.5, cloud.with_alpha(0.3)},
                                         {1, cloud.with_alpha(0)}}});
    } else if (banded) {
      canvas_.move_to({box.x, y - bow});
      canvas_.curve_to({box.x + 0.3 * box.width, y + bow}, {box.x + 0.7 * box.width, y - bow},
                       {box.right(), y + 0.4 * bow});
      canvas_.stroke(colour, {.width = (0.015 + 0.03 * random_.uniform()) * size});
    } else {
      canvas_.move_to({x, box.y});
      canvas_.curve_to({x + bow, box.y + 0.35 * box.height}, {x - bow, y},
                       {x + 1.4 * bow, box.bottom()});
      canvas_.stroke(colour, {.width = 0.012 * size + 0.06});
    }
  }
}

void Graver::saw_teeth(Point centre, double rx, double ry) {
  const int teeth = std::max(10, static_cast<int>((rx + ry) * 1.6));
  for (int i = 0; i < teeth; ++i) {
    const double angle = 2 * pi * i / teeth;
    const double half = 0.42 * pi / teeth;
    const auto on = [&](double grow, double turn) {
      const Point p = at_angle(rx + grow, ry + grow, angle + turn);
      return Point{centre.x + p.x, centre.y + p.y};
    };
    canvas_.polygon({on(0.5, -half * 1.9), on(-0.65, 0), on(0.5, half * 1.9)});
    canvas_.fill_keep(metal_.light);
    canvas_.stroke(metal_.line.with_alpha(0.55), {.width = 0.12});
  }
}

void Graver::cabochon(Point centre, double rx, double ry, Stone stone) {
  const double rim = work_.setting == Setting::saw_bezel ? 0.75 : 0.95;
  canvas_.ellipse({centre.x + 0.35, centre.y + 0.5}, rx + rim + 0.15, ry + rim + 0.15);
  canvas_.fill(black.with_alpha(0.38));
  const Box seat{centre.x - rx - rim, centre.y - ry - rim, 2 * (rx + rim), 2 * (ry + rim)};
  canvas_.ellipse(centre, rx + rim, ry + rim);
  canvas_.fill_keep(sheet_paint(metal_, seat));
  canvas_.stroke(metal_.line.with_alpha(0.75), {.width = 0.22});
  canvas_.scoped([&] {
    canvas_.ellipse(centre, rx, ry);
    canvas_.fill_keep(dome_paint(stone, centre, std::max(rx, ry)));
    canvas_.clip();
    veins(stone, {centre.x - rx, centre.y - ry, 2 * rx, 2 * ry});
    canvas_.ellipse(centre, rx, ry);
    canvas_.stroke(black.with_alpha(0.5), {.width = 0.6});
    canvas_.ellipse({centre.x - 0.12 * rx, centre.y - 0.14 * ry}, 0.98 * rx, 0.98 * ry);
    canvas_.stroke(black.with_alpha(0.16), {.width = 0.3 * std::min(rx, ry)});
  });
  if (work_.setting == Setting::saw_bezel && std::min(rx, ry) > 2.2) {
    saw_teeth(centre, rx, ry);
  }
  // The window, upper left, and the light that comes round below.
  canvas_.scoped([&] {
    canvas_.translate(centre.x - 0.3 * rx, centre.y - 0.4 * ry);
    canvas_.rotate(-0.5);
    canvas_.ellipse({0, 0}, 0.32 * rx, 0.17 * ry);
    canvas_.fill(Colour{1, 1, 1, 0.78});
  });
  canvas_.scoped([&] {
    canvas_.translate(centre.x + 0.34 * rx, centre.y + 0.5 * ry);
    canvas_.rotate(-0.5);
    canvas_.ellipse({0, 0}, 0.34 * rx, 0.12 * ry);
    canvas_.fill(Colour{1, 1, 1, 0.2});
  });
}

void Graver::rope(Point centre, double rx, double ry) {
  const auto ring = [&](Canvas& c) { c.ellipse(centre, rx, ry); };
  ring(canvas_);
  canvas_.stroke(metal_.line.with_alpha(0.9), {.width = 1.9});
  ring(canvas_);
  canvas_.stroke(sheet_paint(metal_, {centre.x - rx, centre.y - ry, 2 * rx, 2 * ry}),
                 {.width = 1.45});
  const int turns = static_cast<int>((rx + ry) * 2.6);
  for (int i = 0; i < turns; ++i) {
    const double angle = 2 * pi * i / turns;
    const Point a = at_angle(rx - 0.7, ry - 0.7, angle);
    const Point b = at_angle(rx + 0.7, ry + 0.7, angle + 1.9 / (rx + ry));
    canvas_.move_to({centre.x + a.x, centre.y + a.y});
    canvas_.line_to({centre.x + b.x, centre.y + b.y});
  }
  canvas_.stroke(metal_.line.with_alpha(0.75), {.width = 0.3});
}

void Graver::wire(const Tracing& path, double width, const Tones& tones) {
  canvas_.scoped([&] {
    canvas_.translate(0.45, 0.7);
    path(canvas_);
    canvas_.stroke(black.with_alpha(0.35), {.width = width, .cap = draw::Cap::round});
  });
  path(canvas_);
  canvas_.stroke(tones.line,
                 {.width = width, .cap = draw::Cap::round, .join = draw::Join::round});
  path(canvas_);
  canvas_.stroke(tones.middle,
                 {.width = 0.8 * width, .cap = draw::Cap::round, .join = draw::Join::round});
  canvas_.scoped([&] {
    canvas_.translate(-0.1 * width, -0.12 * width);
    path(canvas_);
    canvas_.stroke(tones.light, {.width = 0.46 * width, .cap = draw::Cap::round});
    path(canvas_);
    canvas_.stroke(tones.glint, {.width = 0.18 * width, .cap = draw::Cap::round});
  });
}

void Graver::wear(double strength) {
  canvas_.scoped([&] {
    outline()(canvas_);
    canvas_.clip();
    const Box b = box();
    for (int i = 0; i < 5; ++i) {
      const Point p{b.x + b.width * random_.uniform(), b.y + b.height * random_.uniform()};
      const double r = (0.15 + 0.2 * random_.uniform()) * std::max(b.width, b.height);
      canvas_.circle(p, r);
      canvas_.fill(draw::RadialGradient{
          p,
          0,
          p,
          r,
          {{0, metal_.dark.with_alpha(0.2 * strength)}, {1, metal_.dark.with_alpha(0)}}});
    }
    for (int i = 0; i < 14; ++i) {
      const Point p{b.x + b.width * random_.uniform(), b.y + b.height * random_.uniform()};
      const double turn = pi * random_.uniform();
      const double length = 1 + 5 * random_.uniform();
      canvas_.move_to(p);
      canvas_.line_to({p.x + length * std::cos(turn), p.y + length * std::sin(turn)});
    }
    canvas_.stroke(metal_.glint.with_alpha(0.3 * strength), {.width = 0.09});
  });
}

void Graver::border_along(const Tracing& path) {
  const auto dashed = [&](const Colour& colour, double width, double on, double off) {
    path(canvas_);
    canvas_.stroke(colour, {.width = width,
                            .cap = on > 0 ? draw::Cap::butt : draw::Cap::round,
                            .dash = {on, off}});
  };
  if (work_.border == Border::rope) {
    path(canvas_);
    canvas_.stroke(metal_.line.with_alpha(0.9), {.width = 1.7, .join = draw::Join::round});
    path(canvas_);
    canvas_.stroke(sheet_paint(metal_, box()), {.width = 1.3, .join = draw::Join::round});
    dashed(metal_.line.with_alpha(0.75), 1.3, 0.26, 0.5);
  } else if (work_.border == Border::granules) {
    canvas_.scoped([&] {
      canvas_.translate(0.15, 0.2);
      dashed(black.with_alpha(0.45), 1.35, 0, 1.9);
    });
    dashed(metal_.shade, 1.25, 0, 1.9);
    canvas_.scoped([&] {
      canvas_.translate(-0.12, -0.15);
      dashed(metal_.glint, 0.6, 0, 1.9);
    });
  } else {
    canvas_.scoped([&] {
      canvas_.translate(0.12, 0.14);
      dashed(metal_.glint.with_alpha(0.75), 1.1, 0.28, 1.1);
    });
    dashed(metal_.line.with_alpha(0.8), 1.1, 0.28, 1.1);
  }
}

void Graver::border() {
  const bool round = work_.outline == Outline::disc || work_.outline == Outline::oval;
  const double rx = work_.width / 2;
  const double ry = work_.height / 2;
  const int count =
      static_cast<int>((rx + ry) * (work_.border == Border::punched ? 0.95 : 1.15));
  switch (work_.border) {
    case Border::rope:
    case Border::punched:
    case Border::granules:
      if (!round) {
        border_along(outline(1 - 4.2 / std::min(work_.width, work_.height)));
        break;
      }
      if (work_.border == Border::rope) {
        rope({0, 0}, rx - 1.9, ry - 1.9);
        break;
      }
      for (int i = 0; i < count; ++i) {
        const double angle = 2 * pi * (i + 0.5) / count;
        const Point p = at_angle(rx - 2, ry - 2, angle);
        if (work_.border == Border::granules) {
          bead(p, 0.72);
          continue;
        }
        groove(
            [&](Canvas& c) {
              c.new_subpath();
              c.arc(p, 0.85, angle - 1.5, angle + 1.5);
            },
            0.26);
      }
      break;
    case Border::double_line:
      groove(outline(1 - 3.2 / work_.width), 0.22);
      groove(outline(1 - 5.2 / work_.width), 0.22);
      break;
    case Border::bevel:
      groove(outline(1 - 4.4 / work_.width), 0.3);
      break;
    case Border::none:
      break;
  }
}

}  // namespace backmark::scenario
