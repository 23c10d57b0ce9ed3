// Places on paper. All lengths are millimetres, x to the right, y down from the top left
// corner.
#pragma once

namespace backmark::draw {

struct Point {
  double x = 0;
  double y = 0;

  friend bool operator==(Point, Point) = default;
};

struct Size {
  double width = 0;
  double height = 0;

  friend bool operator==(Size, Size) = default;
};

// A rectangle by its top left corner.
struct Box {
  double x = 0;
  double y = 0;
  double width = 0;
  double height = 0;

  double right() const { return x + width; }
  double bottom() const { return y + height; }
  Point centre() const { return {x + width / 2, y + height / 2}; }
  // Larger by `margin` on every side.
  Box grown(double margin) const {
    return {x - margin, y - margin, width + 2 * margin, height + 2 * margin};
  }
  bool overlaps(const Box& other) const {
    return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
  }

  friend bool operator==(const Box&, const Box&) = default;
};

}  // namespace backmark::draw
