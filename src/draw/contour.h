// Outlines of pictures as polygons: what is drawn by a pen instead of printed as pixels.
#pragma once

#include <vector>

#include "draw/geometry.h"
#include "draw/picture.h"

namespace backmark::draw {

// Numbers on a grid, row by row from the top; values.size() == width * height.
struct Field {
  int width = 0;
  int height = 0;
  std::vector<float> values;
};

using Polygon = std::vector<Point>;

// Opacity, 0 to 1; and how dark the picture is on white paper, 0 to 1 (Rec. 709 weights of the
// stored values).
Field opacity_of(const Picture& picture);
Field darkness_of(const Picture& picture);

// Mean over a square of 2 * radius + 1 cells, twice; cells beyond the edge count as the edge.
Field smoothed(const Field& field, int radius);

// The closed lines round everything above `level` (marching squares, ends placed by linear
// interpolation; the field is taken to be below the level beyond its edge). Points are in
// cells, the middle of the first cell is (0.5, 0.5); holes run the other way round. Linear in
// the cells.
std::vector<Polygon> contours(const Field& field, double level);

// With as few of its points as keep it within `tolerance` (Douglas and Peucker 1973); a polygon
// that shrinks to fewer than 3 points comes back empty.
Polygon simplified(const Polygon& polygon, double tolerance);

// In square cells, whichever way round it runs.
double area_of(const Polygon& polygon);

}  // namespace backmark::draw
