#include <algorithm>
#include <cairo.h>
#include <cstring>

#include "draw/canvas.h"
#include "draw/canvas_inside.h"

namespace backmark::draw {

namespace {

void drop_string(void* text) {
  delete static_cast<std::string*>(text);
}

// The surface carries the JPEG along, which a PDF then embeds instead of the pixels.
void attach_jpeg(cairo_surface_t* surface, const std::string& bytes) {
  auto* kept = new std::string(bytes);  // owned by the surface from here on
  cairo_surface_set_mime_data(surface, CAIRO_MIME_TYPE_JPEG,
                              reinterpret_cast<const unsigned char*>(kept->data()),
                              kept->size(), drop_string, kept);
}

void place(cairo_t* cr, cairo_surface_t* surface, const Box& box) {
  cairo_translate(cr, box.x, box.y);
  cairo_scale(cr, box.width / cairo_image_surface_get_width(surface),
              box.height / cairo_image_surface_get_height(surface));
  cairo_set_source_surface(cr, surface, 0, 0);
  cairo_pattern_set_filter(cairo_get_source(cr), CAIRO_FILTER_GOOD);
  // Without it the edge pixels of an opaque picture blend with nothing: a grey hairline.
  cairo_pattern_set_extend(cairo_get_source(cr), CAIRO_EXTEND_PAD);
}

}  // namespace

SurfaceOwner surface_of(const Picture& picture) {
  SurfaceOwner surface(
      cairo_image_surface_create(CAIRO_FORMAT_ARGB32, picture.width, picture.height));
  cairo_surface_flush(surface.get());
  unsigned char* rows = cairo_image_surface_get_data(surface.get());
  const int stride = cairo_image_surface_get_stride(surface.get());
  for (int y = 0; y < picture.height; ++y) {
    unsigned char* out = rows + static_cast<std::ptrdiff_t>(y) * stride;
    for (int x = 0; x < picture.width; ++x, out += 4) {
      const std::uint8_t* p = picture.at(x, y);
      const auto times = [&](unsigned c) { return (c * p[3] + 127U) / 255U; };
      const std::uint32_t pixel = (static_cast<std::uint32_t>(p[3]) << 24) |
                                  (times(p[0]) << 16) | (times(p[1]) << 8) | times(p[2]);
      std::memcpy(out, &pixel, 4);
    }
  }
  cairo_surface_mark_dirty(surface.get());
  return surface;
}

void Canvas::image(const Picture& picture, const Box& box) {
  const SurfaceOwner surface = surface_of(picture);
  save();
  rectangle(box);
  clip();
  place(handle(), surface.get(), box);
  cairo_paint(handle());
  restore();
}

void Canvas::cutout(const Picture& picture, const Box& box, int quality) {
  if (inside_->kind != Inside::Kind::pages) {
    image(picture, box);
    return;
  }
  inlay(inlay_of(picture, quality), box);
}

void Canvas::inlay(Inlay inlay, const Box& box) {
  if (inside_->kind != Inside::Kind::pages) {
    throw BrokenPromise("an inlay on something that is no page");
  }
  const Point corner = on_page({box.x, box.y});
  const Point end = on_page({box.right(), box.bottom()});
  const Box paper = Box{0, 0, trim().width, trim().height}.grown(bleed());
  if (box.width <= 0 || box.height <= 0 ||
      !paper.overlaps({corner.x, corner.y, end.x - corner.x, end.y - corner.y})) {
    return;  // Cairo leaves out what nobody can see
  }
  SurfaceOwner surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, 2, 2));
  attach_jpeg(surface.get(), stand_in(inside_->inlays.size()));
  inside_->inlays.push_back(std::move(inlay));
  save();
  rectangle(box);
  clip();
  // Not by place(): at an edge off the device's grid Cairo would pad the pixels and drop the
  // JPEG.
  cairo_translate(handle(), box.x, box.y);
  cairo_scale(handle(), box.width / 2, box.height / 2);
  cairo_set_source_surface(handle(), surface.get(), 0, 0);
  cairo_paint(handle());
  restore();
  inside_->shown.push_back(std::move(surface));
}

std::vector<Inlay>& Canvas::inlays() const {
  return inside_->inlays;
}

Picture Canvas::snapshot() const {
  if (inside_->kind != Inside::Kind::picture) {
    throw BrokenPromise("only a picture canvas has pixels");
  }
  cairo_surface_t* surface = inside_->surface.get();
  cairo_surface_flush(surface);
  Picture picture = blank_picture(cairo_image_surface_get_width(surface),
                                  cairo_image_surface_get_height(surface));
  const unsigned char* rows = cairo_image_surface_get_data(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  for (int y = 0; y < picture.height; ++y) {
    const unsigned char* in = rows + static_cast<std::ptrdiff_t>(y) * stride;
    for (int x = 0; x < picture.width; ++x, in += 4) {
      std::uint32_t pixel = 0;
      std::memcpy(&pixel, in, 4);
      const std::uint32_t a = pixel >> 24;
      const auto plain = [&](std::uint32_t c) {
        return static_cast<std::uint8_t>(a == 0 ? 0U : std::min(255U, (c * 255U + a / 2) / a));
      };
      std::uint8_t* p = picture.at(x, y);
      p[0] = plain((pixel >> 16) & 255U);
      p[1] = plain((pixel >> 8) & 255U);
      p[2] = plain(pixel & 255U);
      p[3] = static_cast<std::uint8_t>(a);
    }
  }
  return picture;
}

}  // namespace backmark::draw
