#include <algorithm>
#include <cmath>
#include <numbers>

#include "scenario/drawing.h"
#include "scenario/extent.h"

namespace backmark::scenario {
namespace {

using draw::Canvas;
using draw::Colour;
using draw::Point;

struct Cubic {
  Point a, b, c, d;
};

Point on(const Cubic& q, double t) {
  const double u = 1 - t;
  const auto mix = [&](double a, double b, double c, double d) {
    return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
  };
  return {mix(q.a.x, q.b.x, q.c.x, q.d.x), mix(q.a.y, q.b.y, q.c.y, q.d.y)};
}

// Places along a run of cord at even distances, each with the direction there.
struct Place {
  Point at;
  Point along;  // unit
};

std::vector<Place> places_along(const std::vector<Cubic>& run, double step) {
  std::vector<Place> places;
  Point before = run.front().a;
  double walked = 0;
  double next = 0;
  for (const Cubic& cubic : run) {
    for (int i = 1; i <= 60; ++i) {
      const Point here = on(cubic, i / 60.0);
      const double length = std::hypot(here.x - before.x, here.y - before.y);
      const Point along{(here.x - before.x) / std::max(length, 1e-9),
                        (here.y - before.y) / std::max(length, 1e-9)};
      while (next <= walked + length) {
        const double back = walked + length - next;
        places.push_back({{here.x - along.x * back, here.y - along.y * back}, along});
        next += step;
      }
      walked += length;
      before = here;
    }
  }
  return places;
}

Point off(const Place& place, double sideways, double forward) {
  return {place.at.x - place.along.y * sideways + place.along.x * forward,
          place.at.y + place.along.x * sideways + place.along.y * forward};
}

// How a cord's surface is drawn: the slant of its strands and how close they lie, in
// thicknesses.
struct Weave {
  double step = 0.5;
  double slant = 0.9;
  double light = 0.6;
  bool chevron = true;
};

Weave weave_of(CordType type) {
  switch (type) {
    case CordType::plaited_leather:
      return {0.46, 0.95, 0.6, true};
    case CordType::cotton_braid:
      return {0.3, 0.5, 0.38, true};
    case CordType::linen_twist:
      return {0.5, 0.7, 0.5, false};
    case CordType::rayon_braid:
      return {0.34, 0.7, 0.85, true};
    case CordType::nylon_braid:
      return {0.26, 0.55, 0.62, true};
    default:
      return {0.62, 1.1, 0.75, true};
  }
}

class CordMaker {
 public:
  CordMaker(Canvas& canvas, const Work& work)
      : canvas_(canvas),
        work_(work),
        tones_(tones_of(work.colour)),
        thick_(work.cord_thickness) {}

  void lay(const std::vector<Cubic>& run) {
    const Tracing path = [&](Canvas& c) {
      c.move_to(run.front().a);
      for (const Cubic& cubic : run) {
        c.curve_to(cubic.b, cubic.c, cubic.d);
      }
    };
    const auto line = [&](Colour colour, double share) {
      path(canvas_);
      canvas_.stroke(colour, {.width = share * thick_, .join = draw::Join::round});
    };
    line(tones_.dark, 1);
    line(tones_.middle, 0.8);
    if (work_.cord != CordType::round_leather) {
      strands(run);
    }
    // Round: light along the left, shade along the right.
    canvas_.scoped([&] {
      canvas_.translate(-0.2 * thick_, -0.08 * thick_);
      line(tones_.light.with_alpha(work_.cord == CordType::round_leather ? 0.75 : 0.22), 0.16);
    });
    canvas_.scoped([&] {
      canvas_.translate(0.3 * thick_, 0.05 * thick_);
      line(tones_.dark.with_alpha(0.42), 0.3);
    });
  }

 private:
  void strands(const std::vector<Cubic>& run) {
    const Weave weave = weave_of(work_.cord);
    const double reach = 0.42 * thick_;
    const double slant = weave.slant * reach;
    const auto places = places_along(run, weave.step * thick_);
    const auto strokes = [&](double shift) {
      for (const Place& place : places) {
        canvas_.move_to(off(place, -reach, shift - slant));
        canvas_.line_to(off(place, 0, shift));
        canvas_.line_to(off(place, reach, weave.chevron ? shift - slant : shift + slant));
      }
    };
    strokes(0);
    canvas_.stroke(tones_.dark.with_alpha(0.9),
                   {.width = 0.15 * thick_, .join = draw::Join::round});
    strokes(0.17 * thick_);
    canvas_.stroke(tones_.light.with_alpha(weave.light),
                   {.width = 0.1 * thick_, .join = draw::Join::round});
  }

  Canvas& canvas_;
  const Work& work_;
  CordTones tones_;
  double thick_;
};

// One tip, its collar's middle at the origin, pointing down.
class TipMaker {
 public:
  explicit TipMaker(Graver& graver)
      : canvas_(graver.canvas()),
        tones_(tones_of(graver.work().tip_metal)),
        wide_(graver.work().cord_thickness / 2 + 0.75),
        long_(graver.work().tip_length) {}

  void make(TipForm form) {
    switch (form) {
      case TipForm::cone:
        body({{wide_, 0}, {0.9, long_ - 0.8}, {0.45, long_}});
        rings({0.05, 0.11, 0.17, 0.42, 0.58, 0.72});
        break;
      case TipForm::ball:
        body({{wide_, 0},
              {wide_, 0.16 * long_},
              {0.84 * wide_, 0.2 * long_},
              {0.5 * wide_, 0.86 * long_}});
        chevrons();
        rings({0.03, 0.155});
        ball();
        break;
      case TipForm::bullet:
        body({{wide_, 0},
              {wide_, 0.62 * long_},
              {0.86 * wide_, 0.8 * long_},
              {0.5 * wide_, 0.94 * long_},
              {0.15, long_}});
        rings({0.06, 0.12});
        break;
      case TipForm::fluted:
        body({{wide_, 0},
              {1.02 * wide_, 0.12 * long_},
              {0.9 * wide_, 0.16 * long_},
              {0.55 * wide_, 0.93 * long_},
              {0.3, long_}});
        flutes();
        rings({0.04, 0.14});
        break;
      case TipForm::spindle:
        body({{0.9 * wide_, 0},
              {0.9 * wide_, 0.1 * long_},
              {1.12 * wide_, 0.36 * long_},
              {0.5 * wide_, 0.88 * long_},
              {0.25, long_}});
        rings({0.05, 0.1, 0.36});
        break;
      case TipForm::none:
        break;
    }
  }

 private:
  // Turned: half widths at heights, mirrored.
  void body(const std::vector<Point>& profile) {
    std::vector<Point> points;
    for (const Point p : profile) {
      points.push_back({-p.x, p.y});
    }
    for (auto p = profile.rbegin(); p != profile.rend(); ++p) {
      points.push_back(*p);
    }
    canvas_.polygon(points);
    canvas_.fill_keep(rod_paint(tones_, -wide_, wide_));
    canvas_.stroke(tones_.line, {.width = 0.22, .join = draw::Join::round});
    profile_ = profile;
  }

  double half_width(double y) const {
    for (std::size_t i = 1; i < profile_.size(); ++i) {
      const Point a = profile_[i - 1];
      const Point b = profile_[i];
      if (y <= b.y) {
        return a.x + (b.x - a.x) * (y - a.y) / std::max(b.y - a.y, 1e-9);
      }
    }
    return profile_.back().x;
  }

  void rings(const std::vector<double>& shares) {
    for (const double share : shares) {
      const double y = share * long_;
      const double half = half_width(y);
      canvas_.move_to({-half, y});
      canvas_.curve_to({-0.5 * half, y + 0.22}, {0.5 * half, y + 0.22}, {half, y});
      canvas_.stroke_keep(tones_.line.with_alpha(0.75), {.width = 0.3});
      canvas_.new_path();
      canvas_.line({-0.9 * half, y + 0.35}, {0.2 * half, y + 0.45},
                   tones_.glint.with_alpha(0.5), {.width = 0.16});
    }
  }

  void chevrons() {
    for (double y = 0.04 * long_; y < 0.14 * long_; y += 0.9) {
      canvas_.move_to({-wide_, y});
      for (int k = 0; k < 5; ++k) {
        canvas_.line_to({-wide_ + (k + 0.5) * 0.4 * wide_, y + 0.55});
        canvas_.line_to({-wide_ + (k + 1) * 0.4 * wide_, y});
      }
    }
    canvas_.stroke(tones_.line.with_alpha(0.7), {.width = 0.2});
  }

  void flutes() {
    for (int k = -2; k <= 2; ++k) {
      canvas_.move_to({0.34 * k * wide_, 0.19 * long_});
      canvas_.line_to({0.19 * k * wide_, 0.92 * long_});
    }
    canvas_.stroke(tones_.line.with_alpha(0.55), {.width = 0.2});
  }

  void ball() {
    const Point centre{0, long_ - 0.72 * wide_};
    canvas_.circle(centre, 0.72 * wide_);
    canvas_.fill_keep(bead_paint(tones_, centre, 0.72 * wide_));
    canvas_.stroke(tones_.line.with_alpha(0.8), {.width = 0.2});
  }

  Canvas& canvas_;
  Tones tones_;
  double wide_;
  double long_;
  std::vector<Point> profile_;
};

// Knotted end of a cord that has lost its tip.
void fray(Canvas& canvas, const Work& work) {
  const CordTones tones = tones_of(work.colour);
  canvas.ellipse({0, 0.4}, 0.72 * work.cord_thickness, 0.6 * work.cord_thickness);
  canvas.fill_keep(tones.middle);
  canvas.stroke(tones.dark, {.width = 0.3});
}

void hang_tip(Graver& graver, Point at, double turn, TipForm form) {
  graver.canvas().scoped([&] {
    graver.canvas().translate(at.x, at.y);
    graver.canvas().rotate(turn);
    if (form == TipForm::none) {
      fray(graver.canvas(), graver.work());
    } else {
      TipMaker(graver).make(form);
    }
  });
}

}  // namespace

double cord_apart(const Work& work) {
  return std::clamp(0.115 * work.width, work.cord_thickness / 2 + 0.9, 6.0);
}

void draw_cord(Graver& graver) {
  const Work& work = graver.work();
  Random random(work.grain ^ 0xc07dU);
  const double x = cord_apart(work);
  const double edge = work.height / 2;
  const double top = -edge - cord_above_mm;
  const double sway = 1.6 * (random.uniform() - 0.5);
  const double wide = x + 3.2 + 1.5 * random.uniform();
  CordMaker maker(graver.canvas(), work);
  const double r = work.cord_thickness / 2;
  // Up, outward, over the top and down again; neighbouring curves share their tangents.
  const Point left{sway - 0.55 * wide, top + 1 + r};
  const Point right{sway + 0.55 * wide, top + 1 + r};
  const double lean = 0.35 * wide;
  maker.lay({{{-x, edge}, {-x, 0}, {-x, -edge}, {-x, -edge - 1}},
             {{-x, -edge - 1}, {-x, -edge - 8}, {left.x - 1.5 * lean, left.y + 6}, left},
             {left, {left.x + lean, left.y - 4}, {right.x - lean, right.y - 4}, right},
             {right, {right.x + 1.5 * lean, right.y + 6}, {x, -edge - 8}, {x, -edge - 1}},
             {{x, -edge - 1}, {x, -edge}, {x, 0}, {x, edge}}});
  const double foot = edge + cord_below_mm;
  const double shorter = foot - 1 - 4 * random.uniform();
  const double spread = x + 1.2 + 1.6 * random.uniform();
  maker.lay({{{-x, 0}, {-x, edge}, {-x, edge + 8}, {-spread, foot - 0.5}}});
  maker.lay({{{x, 0}, {x, edge}, {x, edge + 8}, {spread, shorter - 0.5}}});
  hang_tip(graver, {-spread, foot - 1.5}, 0.06, work.tips[0]);
  hang_tip(graver, {spread, shorter - 1.5}, -0.06, work.tips[1]);
}

void draw_tips(Graver& graver) {
  Canvas& canvas = graver.canvas();
  const Work& work = graver.work();
  CordMaker maker(canvas, work);
  canvas.push_group();
  for (const double x : {-6.5, 6.5}) {
    maker.lay({{{x, -13}, {x, -8}, {x, -4}, {x, 0.8}}});
  }
  // The cords come out of nothing over nine millimetres.
  canvas.pop_group_through(
      draw::LinearGradient{{0, -13}, {0, -4}, {{0, {0, 0, 0, 0}}, {1, {0, 0, 0, 1}}}});
  hang_tip(graver, {-6.5, 0}, 0, work.tips[0]);
  hang_tip(graver, {6.5, 0}, 0, work.tips[1]);
}

}  // namespace backmark::scenario
