#include <cairo.h>

#include "base/result.h"
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

const Structure& Canvas::structure() const {
  return inside_->structure;
}

ElementNumber Canvas::element(const Element& element) {
  Structure& all = inside_->structure;
  const auto number = static_cast<ElementNumber>(all.elements.size());
  if (element.within < 0 || element.within >= number) {
    throw BrokenPromise("an element within one that was never made");
  }
  all.elements.push_back(element);
  all.children.emplace_back();
  all.children[static_cast<std::size_t>(element.within)].push_back({number, 0});
  return number;
}

// Cairo marks the stretch with a number of its own; draw/pdf_structure.cpp then writes ours.
void Canvas::content(ElementNumber element,
                     const std::function<void()>& body,
                     const Reading& how) {
  Structure& all = inside_->structure;
  if (inside_->kind != Inside::Kind::pages) {
    body();
    return;
  }
  if (element < 0 || static_cast<std::size_t>(element) >= all.elements.size() ||
      all.open_content || all.open_groups > 0) {
    throw BrokenPromise("content within content, within a group, or of no element");
  }
  all.children[static_cast<std::size_t>(element)].push_back({0, all.stretches.size()});
  all.stretches.push_back({element, page(), all.begun_on_page++, how});
  all.open_content = true;
  cairo_tag_begin(handle(), "Span", nullptr);
  body();
  cairo_tag_end(handle(), "Span");
  all.open_content = false;
}

}  // namespace backmark::draw
