#include "draw/contour.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace backmark::draw;

namespace {

// 1 inside the circle, fading over one cell.
Field disc(int size, Point centre, double radius) {
  Field field{size, size, std::vector<float>(static_cast<std::size_t>(size * size))};
  for (int y = 0; y < size; ++y) {
    for (int x = 0; x < size; ++x) {
      const double off = std::hypot(x + 0.5 - centre.x, y + 0.5 - centre.y);
      field.values[static_cast<std::size_t>(y * size + x)] =
          static_cast<float>(std::min(1.0, std::max(0.0, radius - off + 0.5)));
    }
  }
  return field;
}

}  // namespace

TEST_CASE("the outline of a disc has the area of the disc and lies on its rim") {
  const auto lines = contours(disc(100, {50, 50}, 30), 0.5);
  REQUIRE(lines.size() == 1);
  CHECK(area_of(lines[0]) == doctest::Approx(std::numbers::pi * 900).epsilon(0.005));
  for (const Point& p : lines[0]) {
    CHECK(std::abs(std::hypot(p.x - 50, p.y - 50) - 30) < 0.2);
  }
}

TEST_CASE("a ring has two outlines, and what touches the edge is closed along it") {
  Field ring = disc(60, {30, 30}, 20);
  const Field hole = disc(60, {30, 30}, 8);
  for (std::size_t i = 0; i < ring.values.size(); ++i) {
    ring.values[i] -= hole.values[i];
  }
  CHECK(contours(ring, 0.5).size() == 2);
  const Field full{4, 3, std::vector<float>(12, 1)};
  const auto lines = contours(full, 0.5);
  REQUIRE(lines.size() == 1);
  CHECK(area_of(lines[0]) > 9);  // 12 cells, less a third of a cell at each edge
  CHECK(contours(Field{}, 0.5).empty());
  CHECK(contours(Field{4, 3, std::vector<float>(12, 0)}, 0.5).empty());
}

TEST_CASE("corners that touch at a point make two closed lines") {
  // A saddle: above at two opposite corners.
  const Field field{2, 2, {1, 0, 0, 1}};
  const auto lines = contours(field, 0.5);
  CHECK(lines.size() == 2);
  for (const Polygon& line : lines) {
    CHECK(line.size() >= 3);
  }
}

TEST_CASE("simplifying drops points and stays within the tolerance") {
  const Polygon rim = contours(disc(200, {100, 100}, 80), 0.5).at(0);
  const Polygon few = simplified(rim, 0.5);
  CHECK(few.size() < rim.size() / 5);
  for (std::size_t i = 0; i < few.size(); ++i) {
    const Point middle{(few[i].x + few[(i + 1) % few.size()].x) / 2,
                       (few[i].y + few[(i + 1) % few.size()].y) / 2};
    CHECK(std::abs(std::hypot(middle.x - 100, middle.y - 100) - 80) < 0.8);
  }
  const Polygon square{{0, 0}, {1, 0}, {2, 0}, {2, 2}, {0, 2}};
  CHECK(simplified(square, 0.1) == Polygon{{0, 0}, {2, 0}, {2, 2}, {0, 2}});
  CHECK(simplified({{0, 0}, {1, 1}}, 0.1).empty());
}

TEST_CASE("smoothing keeps a plain field and the mean") {
  const Field plain{5, 4, std::vector<float>(20, 0.25F)};
  CHECK(smoothed(plain, 2).values == plain.values);
}
