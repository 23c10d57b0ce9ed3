#include <algorithm>
#include <cairo.h>
#include <cmath>
#include <cstring>

#include "draw/canvas.h"
#include "draw/canvas_inside.h"
#include "draw/jpeg.h"

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

SurfaceOwner alpha_of(const Picture& picture) {
  SurfaceOwner surface(
      cairo_image_surface_create(CAIRO_FORMAT_A8, picture.width, picture.height));
  cairo_surface_flush(surface.get());
  unsigned char* rows = cairo_image_surface_get_data(surface.get());
  const int stride = cairo_image_surface_get_stride(surface.get());
  for (int y = 0; y < picture.height; ++y) {
    for (int x = 0; x < picture.width; ++x) {
      rows[static_cast<std::ptrdiff_t>(y) * stride + x] = picture.at(x, y)[3];
    }
  }
  cairo_surface_mark_dirty(surface.get());
  return surface;
}

// One pass of a running mean of 2 * reach + 1 pixels; steps apart by `step` bytes.
void mean_pass(unsigned char* line, std::size_t count, std::size_t step, int reach) {
  const auto n = static_cast<long>(count);
  std::vector<unsigned char> source(count);
  for (std::size_t i = 0; i < count; ++i) {
    source[i] = line[i * step];
  }
  const int width = 2 * reach + 1;
  long sum = 0;
  for (long i = 0; i < std::min<long>(reach, n); ++i) {
    sum += source[static_cast<std::size_t>(i)];
  }
  for (long i = 0; i < n; ++i) {
    if (i + reach < n) {
      sum += source[static_cast<std::size_t>(i + reach)];
    }
    if (i - reach - 1 >= 0) {
      sum -= source[static_cast<std::size_t>(i - reach - 1)];
    }
    line[static_cast<std::size_t>(i) * step] =
        static_cast<unsigned char>((sum + width / 2) / width);
  }
}

// Three running means approach a normal curve: variance of one is (width^2 - 1) / 12.
void blur(cairo_surface_t* alpha, double deviation_px) {
  const double width = std::sqrt(4 * deviation_px * deviation_px + 1);
  const int reach = std::max(0, static_cast<int>(std::lround((width - 1) / 2)));
  unsigned char* rows = cairo_image_surface_get_data(alpha);
  const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(alpha));
  const auto across = static_cast<std::size_t>(cairo_image_surface_get_width(alpha));
  const auto down = static_cast<std::size_t>(cairo_image_surface_get_height(alpha));
  for (int pass = 0; pass < 3 && reach > 0; ++pass) {
    for (std::size_t y = 0; y < down; ++y) {
      mean_pass(rows + y * stride, across, 1, reach);
    }
    for (std::size_t x = 0; x < across; ++x) {
      mean_pass(rows + x, down, stride, reach);
    }
  }
  cairo_surface_mark_dirty(alpha);
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

Result<Done> Canvas::jpeg(const std::string& bytes, const Box& box) {
  auto picture = decode_jpeg(bytes);
  if (!picture) {
    return picture.problem();
  }
  const SurfaceOwner surface = surface_of(*picture);
  attach_jpeg(surface.get(), bytes);
  save();
  rectangle(box);
  clip();
  place(handle(), surface.get(), box);
  cairo_paint(handle());
  restore();
  return Done{};
}

void Canvas::cutout(const Picture& picture, const Box& box, int quality) {
  if (inside_->kind != Inside::Kind::pages) {
    image(picture, box);
    return;
  }
  Picture opaque = picture;
  for (std::size_t i = 3; i < opaque.rgba.size(); i += 4) {
    opaque.rgba[i] = 255;
  }
  const SurfaceOwner colour = surface_of(opaque);
  attach_jpeg(colour.get(), encode_jpeg(opaque, quality));
  const SurfaceOwner alpha = alpha_of(picture);
  save();
  place(handle(), colour.get(), box);
  cairo_mask_surface(handle(), alpha.get(), 0, 0);
  restore();
}

void Canvas::shadow(const Box& bounds,
                    const Shadow& how,
                    const std::function<void(Canvas&)>& shape,
                    double pixels_per_mm) {
  const double margin = 3 * how.blur;
  const Box area = bounds.grown(margin);
  Canvas cast = Canvas::picture({area.width, area.height}, pixels_per_mm);
  cast.translate(-area.x, -area.y);
  shape(cast);
  const SurfaceOwner alpha = alpha_of(cast.snapshot());
  blur(alpha.get(), how.blur * pixels_per_mm);
  const Colour& c = how.colour;
  save();
  cairo_translate(handle(), area.x + how.dx, area.y + how.dy);
  cairo_scale(handle(), 1 / pixels_per_mm, 1 / pixels_per_mm);
  cairo_set_source_rgba(handle(), c.red, c.green, c.blue, c.alpha);
  cairo_mask_surface(handle(), alpha.get(), 0, 0);
  restore();
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
