#include "draw/canvas.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>
#include <cmath>
#include <cstring>
#include <numbers>

#include "base/text.h"
#include "draw/canvas_inside.h"

namespace backmark::draw {

namespace {

constexpr double points_per_mm = 72.0 / 25.4;

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

void add_stops(cairo_pattern_t* pattern, const std::vector<Stop>& stops) {
  for (const Stop& stop : stops) {
    const Colour& c = stop.colour;
    cairo_pattern_add_color_stop_rgba(pattern, stop.offset, c.red, c.green, c.blue, c.alpha);
  }
}

PatternOwner pattern_of(const Paint& paint) {
  if (const auto* c = std::get_if<Colour>(&paint)) {
    return PatternOwner(cairo_pattern_create_rgba(c->red, c->green, c->blue, c->alpha));
  }
  if (const auto* g = std::get_if<LinearGradient>(&paint)) {
    PatternOwner pattern(cairo_pattern_create_linear(g->from.x, g->from.y, g->to.x, g->to.y));
    add_stops(pattern.get(), g->stops);
    return pattern;
  }
  const auto& g = std::get<RadialGradient>(paint);
  PatternOwner pattern(cairo_pattern_create_radial(g.from.x, g.from.y, g.from_radius, g.to.x,
                                                   g.to.y, g.to_radius));
  add_stops(pattern.get(), g.stops);
  return pattern;
}

void set_stroke(cairo_t* cr, const Stroke& how) {
  cairo_set_line_width(cr, how.width);
  cairo_set_line_cap(cr, static_cast<cairo_line_cap_t>(how.cap));
  cairo_set_line_join(cr, static_cast<cairo_line_join_t>(how.join));
  cairo_set_dash(cr, how.dash.data(), static_cast<int>(how.dash.size()), how.dash_offset);
}

void set_rule(cairo_t* cr, FillRule rule) {
  cairo_set_fill_rule(
      cr, rule == FillRule::winding ? CAIRO_FILL_RULE_WINDING : CAIRO_FILL_RULE_EVEN_ODD);
}

cairo_operator_t operator_of(Blend mode) {
  switch (mode) {
    case Blend::over:
      return CAIRO_OPERATOR_OVER;
    case Blend::multiply:
      return CAIRO_OPERATOR_MULTIPLY;
    case Blend::screen:
      return CAIRO_OPERATOR_SCREEN;
    case Blend::overlay:
      return CAIRO_OPERATOR_OVERLAY;
    case Blend::soft_light:
      return CAIRO_OPERATOR_SOFT_LIGHT;
    case Blend::darken:
      return CAIRO_OPERATOR_DARKEN;
    case Blend::lighten:
      return CAIRO_OPERATOR_LIGHTEN;
    case Blend::erase:
      return CAIRO_OPERATOR_DEST_OUT;
  }
  return CAIRO_OPERATOR_OVER;
}

}  // namespace

Canvas::Canvas(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Canvas::Canvas(Canvas&&) noexcept = default;
Canvas& Canvas::operator=(Canvas&&) noexcept = default;
Canvas::~Canvas() = default;

_cairo* Canvas::handle() const {
  return inside_->cr.get();
}

Canvas Canvas::picture(Size size, double pixels_per_mm) {
  auto inside = std::make_unique<Inside>();
  inside->kind = Inside::Kind::picture;
  inside->trim = size;
  const auto pixels = [&](double mm) {
    return std::max(1, static_cast<int>(std::ceil(mm * pixels_per_mm - 1e-9)));
  };
  inside->surface.reset(
      cairo_image_surface_create(CAIRO_FORMAT_ARGB32, pixels(size.width), pixels(size.height)));
  inside->cr.reset(cairo_create(inside->surface.get()));
  cairo_scale(inside->cr.get(), pixels_per_mm, pixels_per_mm);
  return Canvas(std::move(inside));
}

Canvas Canvas::pages(Size trim, double bleed) {
  auto inside = std::make_unique<Inside>();
  inside->kind = Inside::Kind::pages;
  inside->trim = trim;
  inside->bleed = bleed;
  inside->surface.reset(cairo_pdf_surface_create_for_stream(
      append, &inside->bytes, (trim.width + 2 * bleed) * points_per_mm,
      (trim.height + 2 * bleed) * points_per_mm));
  inside->cr.reset(cairo_create(inside->surface.get()));
  inside->start_page();
  return Canvas(std::move(inside));
}

Canvas Canvas::svg(Size size) {
  auto inside = std::make_unique<Inside>();
  inside->kind = Inside::Kind::svg;
  inside->trim = size;
  inside->surface.reset(cairo_svg_surface_create_for_stream(
      append, &inside->bytes, size.width * points_per_mm, size.height * points_per_mm));
  inside->cr.reset(cairo_create(inside->surface.get()));
  inside->start_page();
  return Canvas(std::move(inside));
}

void Canvas::Inside::start_page() {
  cairo_identity_matrix(cr.get());
  cairo_scale(cr.get(), points_per_mm, points_per_mm);
  cairo_translate(cr.get(), bleed, bleed);
  cairo_get_matrix(cr.get(), &page_matrix);
}

void Canvas::save() {
  cairo_save(handle());
}
void Canvas::restore() {
  cairo_restore(handle());
}

void Canvas::scoped(const std::function<void()>& body) {
  save();
  body();
  restore();
}

void Canvas::translate(double x, double y) {
  cairo_translate(handle(), x, y);
}
void Canvas::rotate(double radians) {
  cairo_rotate(handle(), radians);
}
void Canvas::scale(double x, double y) {
  cairo_scale(handle(), x, y);
}
void Canvas::blend(Blend mode) {
  cairo_set_operator(handle(), operator_of(mode));
}

void Canvas::fill(const Paint& paint, FillRule rule) {
  fill_keep(paint, rule);
  new_path();
}

void Canvas::fill_keep(const Paint& paint, FillRule rule) {
  set_rule(handle(), rule);
  cairo_set_source(handle(), pattern_of(paint).get());
  cairo_fill_preserve(handle());
}

void Canvas::stroke(const Paint& paint, const Stroke& how) {
  stroke_keep(paint, how);
  new_path();
}

void Canvas::stroke_keep(const Paint& paint, const Stroke& how) {
  set_stroke(handle(), how);
  cairo_set_source(handle(), pattern_of(paint).get());
  cairo_stroke_preserve(handle());
}

void Canvas::clip(FillRule rule) {
  set_rule(handle(), rule);
  cairo_clip(handle());
}

void Canvas::flood(const Paint& paint) {
  cairo_set_source(handle(), pattern_of(paint).get());
  cairo_paint(handle());
}

void Canvas::line(Point from, Point to, const Paint& paint, const Stroke& how) {
  new_path();
  move_to(from);
  line_to(to);
  stroke(paint, how);
}

void Canvas::push_group() {
  ++inside_->structure.open_groups;
  cairo_push_group(handle());
}

void Canvas::pop_group(double alpha) {
  --inside_->structure.open_groups;
  cairo_pop_group_to_source(handle());
  cairo_paint_with_alpha(handle(), alpha);
}

void Canvas::pop_group_through(const Paint& mask) {
  --inside_->structure.open_groups;
  cairo_pop_group_to_source(handle());
  cairo_mask(handle(), pattern_of(mask).get());
}

Result<Done> Canvas::next_page() {
  const cairo_status_t status = cairo_status(handle());
  if (status != CAIRO_STATUS_SUCCESS) {
    return Problem{Fault::refused,
                   fmt::format("page {} could not be drawn: {}", inside_->page + 1,
                               cairo_status_to_string(status)),
                   "", ""};
  }
  cairo_show_page(handle());
  inside_->shown.clear();
  inside_->start_page();
  ++inside_->page;
  inside_->structure.begun_on_page = 0;
  return Done{};
}

int Canvas::page() const {
  return inside_->page;
}
Size Canvas::trim() const {
  return inside_->trim;
}
double Canvas::bleed() const {
  return inside_->bleed;
}

Result<std::string> Canvas::finish() {
  cairo_surface_t* surface = inside_->surface.get();
  const cairo_status_t drawn = cairo_status(handle());
  cairo_surface_finish(surface);
  const cairo_status_t status =
      drawn != CAIRO_STATUS_SUCCESS ? drawn : cairo_surface_status(surface);
  if (status != CAIRO_STATUS_SUCCESS) {
    return Problem{
        Fault::refused,
        fmt::format("the drawing could not be finished: {}", cairo_status_to_string(status)),
        "", ""};
  }
  return std::move(inside_->bytes);
}

}  // namespace backmark::draw
