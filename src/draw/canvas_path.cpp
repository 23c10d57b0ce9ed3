#include <cairo.h>
#include <numbers>

#include "draw/canvas.h"

namespace backmark::draw {

namespace {

constexpr double quarter = std::numbers::pi / 2;

}  // namespace

void Canvas::move_to(Point p) {
  cairo_move_to(handle(), p.x, p.y);
}
void Canvas::line_to(Point p) {
  cairo_line_to(handle(), p.x, p.y);
}

void Canvas::curve_to(Point control_1, Point control_2, Point end) {
  cairo_curve_to(handle(), control_1.x, control_1.y, control_2.x, control_2.y, end.x, end.y);
}

void Canvas::arc(Point centre, double radius, double from, double to) {
  cairo_arc(handle(), centre.x, centre.y, radius, from, to);
}

void Canvas::arc_negative(Point centre, double radius, double from, double to) {
  cairo_arc_negative(handle(), centre.x, centre.y, radius, from, to);
}

void Canvas::close() {
  cairo_close_path(handle());
}
void Canvas::new_path() {
  cairo_new_path(handle());
}
void Canvas::new_subpath() {
  cairo_new_sub_path(handle());
}

void Canvas::circle(Point centre, double radius) {
  new_subpath();
  arc(centre, radius, 0, 4 * quarter);
  close();
}

void Canvas::ellipse(Point centre, double radius_x, double radius_y) {
  save();
  translate(centre.x, centre.y);
  scale(radius_x, radius_y);
  circle({0, 0}, 1);
  restore();
}

void Canvas::rectangle(const Box& box) {
  cairo_rectangle(handle(), box.x, box.y, box.width, box.height);
}

void Canvas::rounded_rectangle(const Box& box, double radius) {
  new_subpath();
  arc({box.right() - radius, box.y + radius}, radius, -quarter, 0);
  arc({box.right() - radius, box.bottom() - radius}, radius, 0, quarter);
  arc({box.x + radius, box.bottom() - radius}, radius, quarter, 2 * quarter);
  arc({box.x + radius, box.y + radius}, radius, 2 * quarter, 3 * quarter);
  close();
}

void Canvas::polygon(const std::vector<Point>& points) {
  new_subpath();
  for (const Point& p : points) {
    line_to(p);
  }
  close();
}

void Canvas::spline(const std::vector<Point>& points, bool closed) {
  const auto n = points.size();
  if (n < 2) {
    return;
  }
  const auto at = [&](std::size_t i, int step) {
    if (closed) {
      return points[(i + n + static_cast<std::size_t>(step + static_cast<int>(n))) % n];
    }
    const auto k = static_cast<long>(i) + step;
    return points[static_cast<std::size_t>(
        std::min(std::max(k, 0L), static_cast<long>(n) - 1))];
  };
  new_subpath();
  move_to(points[0]);
  for (std::size_t i = 0; i < (closed ? n : n - 1); ++i) {
    const Point before = at(i, -1);
    const Point a = at(i, 0);
    const Point b = at(i, 1);
    const Point after = at(i, 2);
    curve_to({a.x + (b.x - before.x) / 6, a.y + (b.y - before.y) / 6},
             {b.x - (after.x - a.x) / 6, b.y - (after.y - a.y) / 6}, b);
  }
  if (closed) {
    close();
  }
}

Box Canvas::path_box() const {
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;
  cairo_path_extents(handle(), &left, &top, &right, &bottom);
  return {left, top, right - left, bottom - top};
}

}  // namespace backmark::draw
