// The grid of the book: one measure, the baseline step, governs every page. Two trims share one
// design; B is A at 0.9 in type and leading. All lengths are mm from the trim's corner.
#pragma once

#include <string_view>

#include "draw/geometry.h"

namespace backmark::press::book {

enum class Side { verso, recto };

inline Side side_of(int page) {
  return page % 2 == 0 ? Side::verso : Side::recto;
}

struct Grid {
  draw::Size trim{240, 300};
  double inner = 20;
  double head = 25;
  double outer = 40;
  double step = 5;      // from baseline to baseline of text
  double small = 3.75;  // of captions and notes: three text lines are four of these
  int lines = 45;
  double column = 25;
  double gutter = 6;
  int text_columns = 4;  // of 6; the rest is the side column, on the outside
  bool side_column = true;
  double type = 1;  // share of the sizes of trim A
  double bleed = 3;

  // The y of baseline k; 0 is the head of the type area.
  double line(double k) const { return head + k * step; }
  // The width of n columns with the gutters between them.
  double columns(int n) const { return n * (column + gutter) - gutter; }
  double width() const { return columns(6); }
  double text_width() const { return columns(text_columns); }
  // The left edge of the type area, and of column n (1 to 6).
  double left(Side side) const { return side == Side::recto ? inner : outer; }
  double right(Side side) const { return left(side) + width(); }
  double column_left(Side side, int n) const {
    return left(side) + (n - 1) * (column + gutter);
  }
  // Text stands next to the spine, side matter outside.
  double text_left(Side side) const {
    return side == Side::recto ? left(side) : column_left(side, 7 - text_columns);
  }
  double side_left(Side side) const {
    return side == Side::recto ? column_left(side, text_columns + 1) : left(side);
  }
  double side_width() const { return side_column ? columns(6 - text_columns) : 0; }
  // Type size in points, given for trim A.
  double pt(double size_pt) const { return size_pt * type; }
};

// "A" is the catalogue, 240 x 300; "B" the handbook, 170 x 240. A for any other name.
Grid grid_named(std::string_view name, double bleed);

}  // namespace backmark::press::book
