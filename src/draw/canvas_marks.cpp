#include <cairo.h>

#include "draw/canvas.h"
#include "draw/canvas_inside.h"

namespace backmark::draw {

Point Canvas::on_page(Point p) const {
  cairo_user_to_device(handle(), &p.x, &p.y);
  cairo_matrix_t back = inside_->page_matrix;
  cairo_matrix_invert(&back);
  cairo_matrix_transform_point(&back, &p.x, &p.y);
  return p;
}

void Canvas::destination(const std::string& name, Point at) {
  const Point p = on_page(at);
  inside_->marks.push_back({Mark::Kind::destination, page(), {p.x, p.y, 0, 0}, name, 0});
}

void Canvas::link(const Box& box, const std::string& name) {
  const Point a = on_page({box.x, box.y});
  const Point b = on_page({box.right(), box.bottom()});
  inside_->marks.push_back(
      {Mark::Kind::link, page(), {a.x, a.y, b.x - a.x, b.y - a.y}, name, 0});
}

void Canvas::link_to_address(const Box& box, const std::string& uri) {
  link(box, uri);
  inside_->marks.back().kind = Mark::Kind::address;
}

void Canvas::outline(const std::string& title, int level, Point at) {
  const Point p = on_page(at);
  inside_->marks.push_back({Mark::Kind::outline, page(), {p.x, p.y, 0, 0}, title, level});
}

const std::vector<Mark>& Canvas::marks() const {
  return inside_->marks;
}

}  // namespace backmark::draw
