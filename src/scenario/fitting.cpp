#include <algorithm>
#include <cmath>
#include <numbers>

#include "scenario/drawing.h"

namespace backmark::scenario {
namespace {

using draw::Box;
using draw::Canvas;
using draw::Point;

constexpr double pi = std::numbers::pi;

Tracing eight(double y, double reach) {
  return [=](Canvas& c) {
    c.move_to({0, y});
    c.curve_to({-0.33 * reach, y - 0.52 * reach}, {-reach, y - 0.5 * reach}, {-reach, y});
    c.curve_to({-reach, y + 0.5 * reach}, {-0.33 * reach, y + 0.52 * reach}, {0, y});
    c.curve_to({0.33 * reach, y - 0.52 * reach}, {reach, y - 0.5 * reach}, {reach, y});
    c.curve_to({reach, y + 0.5 * reach}, {0.33 * reach, y + 0.52 * reach}, {0, y});
    c.close();
  };
}

// A pool of solder under a joint; soft solder is larger and duller; rivets are round heads.
void joint(Graver& g, Point at, double size) {
  const Work& work = g.work();
  if (work.solder == Solder::rivets) {
    g.bead(at, 0.9);
    return;
  }
  const double r = work.solder == Solder::soft ? 1.5 * size : size;
  g.canvas().ellipse(at, 1.25 * r, r);
  g.canvas().fill_keep(work.solder == Solder::soft ? draw::Paint{tones_of(Metal::pewter).middle}
                                                   : draw::Paint{g.metal().light});
  g.canvas().stroke(g.metal().dark.with_alpha(0.6), {.width = 0.2});
}

void figure_eights(Graver& g) {
  const double rise = std::min(0.18 * g.work().height, 9.0);
  const double reach = cord_apart(g.work()) + g.work().cord_thickness / 2 + 1.6;
  for (const double y : {-rise, rise}) {
    joint(g, {0, y}, 1.5);
    g.wire(eight(y, reach), 1.35, g.metal());
  }
}

void tubes(Graver& g) {
  const double half = std::min(0.28 * g.work().height, 13.0);
  const double r = g.work().cord_thickness / 2 + 0.6;
  for (const double side : {-1.0, 1.0}) {
    const double x = side * cord_apart(g.work());
    joint(g, {x, half - 1}, 2.2);
    joint(g, {x, -half + 1}, 2.2);
    const Box box{x - r, -half, 2 * r, 2 * half};
    g.canvas().rectangle({box.x + 0.6, box.y + 0.9, box.width, box.height});
    g.canvas().fill(draw::Colour{0, 0, 0, 0.3});
    g.canvas().rectangle(box);
    g.canvas().fill_keep(rod_paint(g.metal(), x - r, x + r));
    g.canvas().stroke(g.metal().line, {.width = 0.25});
    for (const double y : {-half, half}) {
      g.canvas().ellipse({x, y}, r, 0.3 * r);
      g.canvas().fill_keep(g.metal().shade);
      g.canvas().stroke(g.metal().line, {.width = 0.25});
    }
  }
}

void bar(Graver& g) {
  const bool stamped = g.work().bar_kind == 1;
  const double half = std::min(0.24 * g.work().height, 10.5);
  const double r = g.work().cord_thickness / 2 + 0.7;
  const double wide = cord_apart(g.work()) + r + 0.5;
  const Box box{-wide, -half, 2 * wide, 2 * half};
  const Tones tones = stamped ? tones_of(trade_steel) : g.metal();
  joint(g, {-wide + 1, half}, 1.6);
  joint(g, {wide - 1, -half}, 1.6);
  g.laid([&](Canvas& c) { c.rounded_rectangle(box, stamped ? 0.8 : 0.2); }, box, tones);
  for (const double side : {-1.0, 1.0}) {
    const double x = side * cord_apart(g.work());
    g.canvas().rectangle({x - r, -half, 2 * r, 2 * half});
    g.canvas().fill_keep(rod_paint(tones, x - r, x + r));
    g.canvas().stroke(tones.line.with_alpha(0.7), {.width = 0.2});
  }
  const double tongue = std::max(0.9, cord_apart(g.work()) - r - 0.2);
  const Box inner{-tongue, -0.8 * half, 2 * tongue, 1.6 * half};
  g.laid([&](Canvas& c) { c.rounded_rectangle(inner, 0.4); }, inner, tones);
  if (stamped) {
    g.canvas().scoped([&] {
      g.canvas().rotate(-pi / 2);
      draw_letters(g, "NO 2", {0, 0}, 0.8, false);
    });
  }
}

void clip(Graver& g) {
  const double k = clip_scale(g.work());
  const Tones steel = tones_of(trade_steel);
  Canvas& canvas = g.canvas();
  canvas.scoped([&] {
    canvas.scale(k);
    const double wide = 10.5;
    const Tracing plate = [&](Canvas& c) {
      c.polygon({{-8.6, -11},
                 {8.6, -11},
                 {wide, -8.6},
                 {wide, 9.5},
                 {7, 12.5},
                 {-7, 12.5},
                 {-wide, 9.5},
                 {-wide, -8.6}});
    };
    g.laid(plate, {-wide, -11, 2 * wide, 23.5}, steel);
    const Box panel{-8, -8.6, 16, 9.6};
    g.sunk([&](Canvas& c) { c.rounded_rectangle(panel, 0.8); }, panel, steel.light);
    std::vector<std::string> lines{"TARN"};
    if (g.work().clip_legend == 0) {
      lines = {"TARN WORKS", "ENNET", "PAT.APP.FOR"};
    } else if (g.work().clip_legend == 1) {
      lines = {"TARN WORKS", "PAT. 20417"};
    } else if (g.work().clip_legend == 2) {
      lines = {"TARN PAT."};
    }
    const double pitch = 2.7;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const double y =
          -3.8 + (static_cast<double>(i) - (static_cast<double>(lines.size()) - 1) / 2) * pitch;
      draw_letters(g, lines[i], {0, y}, std::min(1.7, 13.5 / letters_width(lines[i], 1)),
                   false);
    }
    // The sprung lip under which the cord is pressed.
    g.laid(
        [&](Canvas& c) {
          c.move_to({-7.6, 3});
          c.curve_to({-3, 6}, {3, 6}, {7.6, 3});
          c.line_to({7, 9});
          c.curve_to({3, 11}, {-3, 11}, {-7, 9});
          c.close();
        },
        {-7.6, 3, 15.2, 8}, steel);
    g.groove(
        [&](Canvas& c) {
          c.move_to({-6.6, 8});
          c.curve_to({-3, 9.8}, {3, 9.8}, {6.6, 8});
        },
        0.3);
    g.bead({-8.8, -9}, 0.8);
    g.bead({8.8, -9}, 0.8);
  });
}

void button(Graver& g) {
  const Tones steel = tones_of(trade_steel);
  const double r = (g.work().wide_button ? 5.5 : 4.0) / 2 + 0.9;
  const double x = std::max(cord_apart(g.work()), r + 0.3);
  const double half = std::min(0.27 * g.work().height, g.work().wide_button ? 12.0 : 10.0);
  for (const double side : {-1.0, 1.0}) {
    const Box bore{side * x - r, -half, 2 * r, 2 * half};
    g.laid([&](Canvas& c) { c.rounded_rectangle(bore, 0.5); }, bore, steel);
    g.canvas().rounded_rectangle(bore, 0.5);
    g.canvas().fill(rod_paint(steel, bore.x, bore.right()));
  }
  const Box bridge{-x - 1.2 * r, -0.42 * half, 2 * x + 2.4 * r, 0.84 * half};
  g.laid([&](Canvas& c) { c.rounded_rectangle(bridge, 0.6); }, bridge, steel);
  const double knob = std::min(0.4 * half, 4.2);
  g.canvas().circle({0.4, 0.6}, knob);
  g.canvas().fill(draw::Colour{0, 0, 0, 0.4});
  g.canvas().circle({0, 0}, knob);
  g.canvas().fill_keep(bead_paint(steel, {0, 0}, knob));
  g.canvas().stroke(steel.line, {.width = 0.25});
  for (int i = 0; i < 28; ++i) {
    g.canvas().move_to(at_angle(0.8 * knob, 0.8 * knob, 2 * pi * i / 28));
    g.canvas().line_to(at_angle(0.98 * knob, 0.98 * knob, 2 * pi * i / 28));
  }
  g.canvas().stroke(steel.line.with_alpha(0.8), {.width = 0.22});
  const Tones brass = tones_of(Metal::brass);
  g.canvas().circle({0, 0}, 0.62 * knob);
  g.canvas().fill_keep(sheet_paint(brass, {-knob, -knob, 2 * knob, 2 * knob}));
  g.canvas().stroke(brass.line.with_alpha(0.8), {.width = 0.2});
}

void pin(Graver& g) {
  // Within what the outline leaves of its middle.
  const bool narrow = g.work().outline == Outline::star || g.work().outline == Outline::tern ||
                      g.work().outline == Outline::tail || g.work().outline == Outline::ring;
  const double half = (narrow ? 0.2 : 0.33) * g.work().width;
  const double y =
      g.work().outline == Outline::crescent ? 0.3 * g.work().height : -0.08 * g.work().height;
  joint(g, {-half, y}, 1.7);
  joint(g, {half, y}, 1.7);
  const Box hinge{-half - 1.5, y - 1.7, 3, 3.4};
  g.laid([&](Canvas& c) { c.rounded_rectangle(hinge, 0.4); }, hinge, g.metal());
  g.wire(
      [&](Canvas& c) {
        c.move_to({-half, y});
        c.curve_to({-0.3 * half, y - 1.6}, {0.3 * half, y - 1.6}, {half, y});
      },
      1.0, g.metal());
  g.wire(
      [&](Canvas& c) {
        c.new_subpath();
        c.arc({half, y}, 1.6, -0.8 * pi, 0.75 * pi);
      },
      0.9, g.metal());
}

}  // namespace

double clip_scale(const Work& work) {
  return std::clamp(work.height / 34, 0.62, 1.0);
}

void draw_fitting(Graver& graver) {
  switch (graver.work().fitting) {
    case Fitting::figure_eight:
      figure_eights(graver);
      break;
    case Fitting::tubes:
      tubes(graver);
      break;
    case Fitting::bar:
      bar(graver);
      break;
    case Fitting::clip:
      clip(graver);
      break;
    case Fitting::button:
      button(graver);
      break;
    case Fitting::pin:
      pin(graver);
      break;
    case Fitting::none:
      break;
  }
}

}  // namespace backmark::scenario
