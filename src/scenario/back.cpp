#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "scenario/drawing.h"
#include "scenario/extent.h"
#include "scenario/outline.h"
#include "scenario/vocabulary.h"

namespace backmark::scenario {
namespace {

using draw::Box;
using draw::Canvas;
using draw::Point;

Tracing turned_outline(const Work& work) {
  return [&work](Canvas& c) {
    c.save();
    c.scale(-1, 1);
    trace(c, work.outline, work.width, work.height);
    c.restore();
  };
}

// Strokes of a file across the box at an angle, `pitch` apart.
void file_marks(Graver& g, double turn, double pitch, double alpha) {
  Canvas& canvas = g.canvas();
  const double reach = std::hypot(g.work().width, g.work().height) / 2;
  canvas.scoped([&] {
    canvas.rotate(turn);
    for (double y = -reach; y < reach; y += pitch * (0.6 + 0.8 * g.random().uniform())) {
      const double start = -reach + 1.2 * reach * g.random().uniform();
      canvas.move_to({start, y});
      canvas.line_to(
          {start + reach * (0.3 + 0.9 * g.random().uniform()), y + 0.5 * g.random().uniform()});
    }
    canvas.stroke(g.metal().glint.with_alpha(alpha), {.width = 0.1});
    for (double y = -reach; y < reach; y += pitch * (0.9 + g.random().uniform())) {
      const double start = -reach + 1.2 * reach * g.random().uniform();
      canvas.move_to({start, y});
      canvas.line_to({start + reach * (0.2 + 0.7 * g.random().uniform()), y});
    }
    canvas.stroke(g.metal().dark.with_alpha(0.8 * alpha), {.width = 0.1});
  });
}

void pits(Graver& g) {
  const Box b = g.box();
  const int count = static_cast<int>(b.width * b.height / 9);
  for (int i = 0; i < count; ++i) {
    const Point p{b.x + b.width * g.random().uniform(), b.y + b.height * g.random().uniform()};
    const double r = 0.08 + 0.22 * g.random().uniform();
    g.canvas().circle({p.x + 0.1, p.y + 0.12}, r);
    g.canvas().fill(g.metal().glint.with_alpha(0.5));
    g.canvas().circle(p, r);
    g.canvas().fill(g.metal().dark.with_alpha(0.55));
  }
}

void finish(Graver& g) {
  switch (g.work().finish) {
    case Finish::filed:
      file_marks(g, -0.35, 0.7, 0.45);
      break;
    case Finish::crossed:
      file_marks(g, -0.7, 0.85, 0.36);
      file_marks(g, 0.8, 0.85, 0.36);
      break;
    case Finish::polished: {
      const Box b = g.box();
      g.canvas().flood(draw::LinearGradient{{b.x, b.y},
                                            {b.right(), b.bottom()},
                                            {{0, {1, 1, 1, 0.3}},
                                             {0.35, {1, 1, 1, 0}},
                                             {0.5, {1, 1, 1, 0.4}},
                                             {0.56, {1, 1, 1, 0}},
                                             {1, {0, 0, 0, 0.12}}}});
      break;
    }
    case Finish::pickled:
      g.canvas().flood(draw::Colour{1, 1, 1, 0.34});
      break;
    case Finish::cast_skin:
      pits(g);
      break;
  }
}

void scar(Graver& g) {
  const double y = -g.work().height / 2 + 3.2;
  const Box box{-3.2, y - 1.5, 6.4, 3};
  g.canvas().ellipse({0, y}, 3.2, 1.5);
  g.canvas().fill(sheet_paint(g.metal(), box));
  for (int i = 0; i < 7; ++i) {
    g.canvas().line({-2.6 + 0.3 * i, y - 1 + 0.3 * i}, {1 + 0.3 * i, y - 1.1 + 0.3 * i},
                    g.metal().glint.with_alpha(0.6), {.width = 0.12});
  }
  g.canvas().ellipse({0, y}, 3.2, 1.5);
  g.canvas().stroke(g.metal().dark.with_alpha(0.45), {.width = 0.2});
}

// Half of what the fitting and the cord cover across the middle.
double covered(const Work& work) {
  if (!work.worn_on_cord()) {
    return 0;
  }
  const double cord = cord_apart(work) + work.cord_thickness / 2;
  switch (work.fitting) {
    case Fitting::clip:
      return std::max(cord, 10.5 * clip_scale(work)) + 0.7;
    case Fitting::button:
      return cord + 3.2;
    default:
      return cord + 2;
  }
}

// Where letters find room beside cord and fitting, on the right; mirrored, on the left.
struct Room {
  Point centre;
  double across = 0;
};

Room between(double inner, double outer, double y) {
  return Room{{(inner + outer) / 2, y}, std::max(2.5, outer - inner)};
}

Room room_beside(const Work& work) {
  const double w = work.width;
  const double h = work.height;
  const double cord = cord_apart(work) + work.cord_thickness / 2 + 0.9;
  switch (work.outline) {
    case Outline::star:
      return between(covered(work), 0.42 * w, 0);
    case Outline::tail:
      return between(0.18 * w, 0.42 * w, -0.3 * h);
    case Outline::tern:
      return between(0.16 * w, 0.36 * w, -0.2 * h);
    case Outline::crescent:
      return between(std::max(cord, 0.2 * w), 0.38 * w, 0.26 * h);
    case Outline::fish:
      return between(covered(work), 0.36 * w, 0.04 * h);
    case Outline::ring:
      return between(-0.1 * w, 0.1 * w, 0.19 * h);
    case Outline::plaque:
      return between(cord, 0.46 * w, 0.34 * h);
    default:
      break;
  }
  if (!work.worn_on_cord()) {
    return between(-0.2 * w, 0.2 * w, 0.2 * h);
  }
  const Room level = between(covered(work), 0.455 * w, 0.02 * h);
  return level.across > 6.5 ? level : between(cord, 0.37 * w, 0.3 * h);
}

double mark_height(const Work& work) {
  double longest = 1;
  for (const std::string& line : work.mark) {
    longest = std::max(longest, letters_width(line, 1));
  }
  // An oval or a frame wants room of its own.
  const double frame = work.mark_outline == MarkOutline::none ? 0 : 2.4;
  return std::clamp(room_beside(work).across / (longest + frame), 0.7, 1.9);
}

// The words of an inscription, on as few lines of up to eight letters as they need.
std::vector<std::string> lines_of(const std::string& inscription, bool narrow) {
  if (!narrow) {
    return {inscription};
  }
  std::vector<std::string> lines;
  for (const auto word : split(inscription, " ")) {
    if (!lines.empty() && lines.back().size() + word.size() < 8) {
      lines.back() += " " + std::string(word);
    } else {
      lines.emplace_back(word);
    }
  }
  return lines;
}

void inscribe(Graver& g) {
  const Work& work = g.work();
  const bool corded = work.worn_on_cord();
  const Room room =
      corded ? room_beside(work) : Room{{0, 0.32 * work.height}, 0.5 * work.width};
  const auto lines = lines_of(work.inscription, corded);
  double longest = 1;
  for (const std::string& line : lines) {
    longest = std::max(longest, letters_width(line, 1));
  }
  const double height = std::clamp(room.across / longest, 0.8, 2.2);
  const double middle = (static_cast<double>(lines.size()) - 1) / 2;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const double y = room.centre.y + 1.6 * height * (static_cast<double>(i) - middle);
    draw_letters(g, lines[i], {corded ? -room.centre.x : 0, y}, height, true);
  }
}

}  // namespace

void draw_back_plate(Graver& g) {
  const Work& work = g.work();
  Canvas& canvas = g.canvas();
  if (work.outline == Outline::ring) {
    canvas.scoped([&] { draw_front(g); });
    const Box seat{-0.26 * work.width, -0.26 * work.height, 0.52 * work.width,
                   0.52 * work.height};
    g.laid(
        [&](Canvas& c) {
          c.ellipse({0, 0}, seat.width / 2, seat.height / 2);
        },
        seat, g.metal());
  } else {
    g.plate(turned_outline(work), g.box(), 0.35);
    canvas.scoped([&] {
      turned_outline(work)(canvas);
      canvas.clip();
      canvas.flood(g.metal().middle.with_alpha(0.35));
      finish(g);
    });
    if (work.bail_scar) {
      scar(g);
    }
  }
  if (!work.inscription.empty()) {
    canvas.scoped([&] {
      turned_outline(work)(canvas);
      canvas.clip();
      inscribe(g);
    });
  }
  if (!work.mark.empty()) {
    draw_mark(g, room_beside(work).centre, mark_height(work));
  }
}

void draw_mark_detail(Graver& g, const Box& box) {
  Canvas& canvas = g.canvas();
  canvas.rectangle(box);
  canvas.fill(sheet_paint(g.metal(), {3 * box.x, 3 * box.y, 3 * box.width, 3 * box.height}));
  canvas.flood(g.metal().middle.with_alpha(0.5));
  finish(g);
  for (int i = 0; i < 4; ++i) {
    const Point p{box.x + box.width * g.random().uniform(),
                  box.y + box.height * g.random().uniform()};
    const double r = 2 + 2 * g.random().uniform();
    canvas.circle(p, r);
    canvas.fill(draw::RadialGradient{
        p, 0, p, r, {{0, g.metal().dark.with_alpha(0.2)}, {1, g.metal().dark.with_alpha(0)}}});
  }
  draw_mark(g, {0, 0}, mark_height(g.work()));
}

}  // namespace backmark::scenario
