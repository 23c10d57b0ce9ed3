// What a canvas holds; for the bodies of this room only.
#pragma once

#include <cairo.h>
#include <memory>
#include <string>
#include <vector>

#include "draw/canvas.h"
#include "draw/inlay.h"

namespace backmark::draw {

struct DropContext {
  void operator()(cairo_t* cr) const { cairo_destroy(cr); }
};
struct DropSurface {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct DropPattern {
  void operator()(cairo_pattern_t* pattern) const { cairo_pattern_destroy(pattern); }
};

using ContextOwner = std::unique_ptr<cairo_t, DropContext>;
using SurfaceOwner = std::unique_ptr<cairo_surface_t, DropSurface>;
using PatternOwner = std::unique_ptr<cairo_pattern_t, DropPattern>;

// A stretch of a page that belongs to an element: the `place`th one begun on its page.
struct ContentStretch {
  ElementNumber element = 0;
  int page = 0;
  int place = 0;
  Reading how;
};

// Children and stretches of an element in the order in which they came: an element, or if that
// is 0 the index of a stretch.
struct Child {
  ElementNumber element = 0;
  std::size_t stretch = 0;
};

// elements[0] is the document.
struct Structure {
  std::vector<Element> elements{Element{}};
  std::vector<std::vector<Child>> children{{}};
  std::vector<ContentStretch> stretches;
  int begun_on_page = 0;
  int open_groups = 0;
  bool open_content = false;
};

struct Canvas::Inside {
  enum class Kind { picture, pages, svg };
  Kind kind = Kind::picture;
  Size trim;
  double bleed = 0;
  int page = 0;
  std::string bytes;  // outlives the surface that writes to it
  SurfaceOwner surface;
  // Of the page under way: Cairo forgets the JPEG of a surface that goes before its page is
  // done.
  std::vector<SurfaceOwner> shown;
  ContextOwner cr;
  cairo_matrix_t page_matrix{};
  std::vector<Mark> marks;
  Structure structure;
  std::vector<Inlay> inlays;  // what stands for each: draw/pdf_inlay.cpp

  void start_page();
};

// What stands for inlay `number` in Cairo's PDF: a JPEG of a few pixels with a remark that says
// so. Not of one pixel, which Cairo would take for a colour.
std::string stand_in(std::size_t number);

// Premultiplied, as Cairo keeps it.
SurfaceOwner surface_of(const Picture& picture);

}  // namespace backmark::draw
