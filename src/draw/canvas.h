// A drawing surface with one set of operations for pages (PDF, SVG) and pictures (PNG).
// All lengths are millimetres of the current transform, angles radians clockwise, y down.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "base/result.h"
#include "draw/colour.h"
#include "draw/geometry.h"
#include "draw/picture.h"
#include "draw/structure.h"

struct _cairo;
struct _cairo_surface;

namespace backmark::draw {

struct Inlay;      // draw/inlay.h
struct Structure;  // draw/canvas_inside.h

enum class Cap { butt, round, square };
enum class Join { miter, round, bevel };
enum class FillRule { winding, even_odd };
// `erase` takes away what is below; it and the others are kept as vectors in a PDF except
// erase.
enum class Blend { over, multiply, screen, overlay, soft_light, darken, lighten, erase };

struct Stroke {
  double width = 0.25;
  Cap cap = Cap::butt;
  Join join = Join::miter;
  std::vector<double> dash = {};  // lengths on, off, on ...; empty: unbroken
  double dash_offset = 0;
};

// A place a link can lead to, or a link, or a line of the outline: kept beside the drawing and
// written into the PDF when it is finished (draw/pdf.h). Boxes are page millimetres from the
// trim's corner, whatever the transform was.
struct Mark {
  enum class Kind { destination, link, address, outline };
  Kind kind = Kind::destination;
  int page = 0;        // from 0
  Box box;             // destination and outline: only the corner is used
  std::string target;  // destination or link: a name; address: a URI; outline: the title
  int level = 0;       // outline only: 0 is the top
};

class Canvas {
 public:
  // Transparent pixels, ceil(size * pixels_per_mm) each way.
  static Canvas picture(Size size, double pixels_per_mm);
  // Pages of trim size with `bleed` round it; the origin is the trim's corner. Starts on page
  // 0.
  static Canvas pages(Size trim, double bleed);
  // One page as SVG.
  static Canvas svg(Size size);

  Canvas(Canvas&&) noexcept;
  Canvas& operator=(Canvas&&) noexcept;
  ~Canvas();

  // --- state
  void save();
  void restore();
  // Calls `body` between save and restore.
  void scoped(const std::function<void()>& body);
  void translate(double x, double y);
  void rotate(double radians);
  void scale(double x, double y);
  void scale(double both) { scale(both, both); }
  void blend(Blend mode);

  // --- the path, built up and used by fill, stroke or clip
  void move_to(Point p);
  void line_to(Point p);
  void curve_to(Point control_1, Point control_2, Point end);
  // Clockwise from angle to angle; joined by a line to the point before, if any.
  void arc(Point centre, double radius, double from, double to);
  void arc_negative(Point centre, double radius, double from, double to);
  void close();
  void new_path();
  void new_subpath();
  void circle(Point centre, double radius);
  void ellipse(Point centre, double radius_x, double radius_y);
  void rectangle(const Box& box);
  void rounded_rectangle(const Box& box, double radius);
  void polygon(const std::vector<Point>& points);
  // A smooth closed or open curve through the points (Catmull-Rom, as cubic pieces).
  void spline(const std::vector<Point>& points, bool closed);
  // The box of the path, without stroke.
  Box path_box() const;

  // --- paint; fill and stroke drop the path, the _keep forms keep it
  void fill(const Paint& paint, FillRule rule = FillRule::winding);
  void fill_keep(const Paint& paint, FillRule rule = FillRule::winding);
  void stroke(const Paint& paint, const Stroke& how);
  void stroke_keep(const Paint& paint, const Stroke& how);
  void clip(FillRule rule = FillRule::winding);
  // The whole surface (within the clip).
  void flood(const Paint& paint);
  void line(Point from, Point to, const Paint& paint, const Stroke& how);

  // What is drawn between the two calls is laid down at once with the given opacity.
  void push_group();
  void pop_group(double alpha);
  // As pop_group, seen through the alpha of a gradient (a fading cord end).
  void pop_group_through(const Paint& mask);

  // --- pictures
  // Stretched to the box.
  void image(const Picture& picture, const Box& box);
  // Colour from a JPEG of `picture`, opacity apart: small in a PDF. On other surfaces as
  // image().
  void cutout(const Picture& picture, const Box& box, int quality = 90);
  // What was packed before (draw/inlay.h), stretched to the box. Only on pages(): otherwise a
  // broken promise.
  void inlay(Inlay inlay, const Box& box);

  // --- pages
  // Ends the page. Problem: refused, when something drawn was not possible (names the page).
  Result<Done> next_page();
  int page() const;
  Size trim() const;
  double bleed() const;
  // A point of the current transform in page millimetres.
  Point on_page(Point p) const;

  void destination(const std::string& name, Point at);
  void link(const Box& box, const std::string& name);
  void link_to_address(const Box& box, const std::string& uri);
  void outline(const std::string& title, int level, Point at);
  const std::vector<Mark>& marks() const;

  // --- structure, for pages(); on other surfaces content() only draws
  // A new last child of `element.within`. Its words and pictures follow by content().
  ElementNumber element(const Element& element);
  // What `body` draws is the next stretch of the element, in reading order; an element may have
  // stretches on several pages. Whatever is drawn outside is no content (feet, rules, shadows).
  // Broken promise: within another content() or a group, or an element that was never made.
  void content(ElementNumber element,
               const std::function<void()>& body,
               const Reading& how = {});

  // --- results; nothing can be drawn afterwards
  // pages(): the bytes as Cairo wrote them, to be finished by draw/pdf.h. svg(): the text.
  // The page under way, if anything was drawn on it, is ended.
  Result<std::string> finish();
  // picture(): what has been drawn so far.
  Picture snapshot() const;

  // For the bodies of this room only.
  _cairo* handle() const;
  const Structure& structure() const;
  std::vector<Inlay>& inlays() const;

 private:
  struct Inside;
  explicit Canvas(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace backmark::draw
