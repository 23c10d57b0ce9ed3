#include "draw/contour.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace backmark::draw {

namespace {

// The field with a border of cells below every level, and the places of its edges.
class Tracer {
 public:
  Tracer(const Field& field, double level)
      : field_(field), level_(level), columns_(field.width + 2), rows_(field.height + 2) {
    const std::size_t edges = 2 * static_cast<std::size_t>(columns_ * rows_);
    next_.assign(edges, none);
  }

  std::vector<Polygon> trace() {
    for (int y = 0; y + 1 < rows_; ++y) {
      for (int x = 0; x + 1 < columns_; ++x) {
        join_cell(x, y);
      }
    }
    std::vector<Polygon> all;
    for (std::size_t edge = 0; edge < next_.size(); ++edge) {
      if (next_[edge] != none) {
        all.push_back(follow(edge));
      }
    }
    return all;
  }

 private:
  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  double value(int x, int y) const {
    if (x < 1 || y < 1 || x > field_.width || y > field_.height) {
      return level_ - 1;
    }
    return field_
        .values[static_cast<std::size_t>(y - 1) * static_cast<std::size_t>(field_.width) +
                static_cast<std::size_t>(x - 1)];
  }
  bool above(int x, int y) const { return value(x, y) > level_; }

  // An edge runs right (0) or down (1) from a corner.
  std::size_t edge(int x, int y, int down) const {
    return 2 * static_cast<std::size_t>(y * columns_ + x) + static_cast<std::size_t>(down);
  }

  // Joins the edges that the line crosses, what is above always at its right. Sides: 0 top, 1
  // right, 2 bottom, 3 left; a saddle is cut into two corners.
  void join_cell(int x, int y) {
    const std::array<std::size_t, 4> sides{edge(x, y, 0), edge(x + 1, y, 1), edge(x, y + 1, 0),
                                           edge(x, y, 1)};
    const std::array<bool, 4> in{above(x, y), above(x + 1, y), above(x + 1, y + 1),
                                 above(x, y + 1)};
    // Going round clockwise, a line leaves where "in" ends and enters where it begins.
    for (std::size_t at = 0; at < 4; ++at) {
      if (!in[at] && in[(at + 1) % 4]) {
        std::size_t end = (at + 1) % 4;
        while (in[(end + 1) % 4]) {
          end = (end + 1) % 4;
        }
        next_[sides[end]] = sides[at];
      }
    }
  }

  Point place(std::size_t edge) const {
    const bool down = edge % 2 == 1;
    const int x = static_cast<int>(edge / 2) % columns_;
    const int y = static_cast<int>(edge / 2) / columns_;
    const double from = value(x, y);
    const double to = down ? value(x, y + 1) : value(x + 1, y);
    const double share = from == to ? 0.5 : std::clamp((level_ - from) / (to - from), 0.0, 1.0);
    return {x - 0.5 + (down ? 0 : share), y - 0.5 + (down ? share : 0)};
  }

  Polygon follow(std::size_t from) {
    Polygon polygon;
    std::size_t at = from;
    while (at != none && next_[at] != none) {
      polygon.push_back(place(at));
      const std::size_t on = next_[at];
      next_[at] = none;
      at = on;
    }
    return polygon;
  }

  const Field& field_;
  double level_;
  int columns_;
  int rows_;
  std::vector<std::size_t> next_;  // the edge that the line goes to from this one
};

Field field_of(const Picture& picture) {
  const std::size_t cells =
      static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height);
  return {picture.width, picture.height, std::vector<float>(cells)};
}

double distance_to_line(Point p, Point a, Point b) {
  const double dx = b.x - a.x;
  const double dy = b.y - a.y;
  const double length = std::hypot(dx, dy);
  return length == 0 ? std::hypot(p.x - a.x, p.y - a.y)
                     : std::abs((p.x - a.x) * dy - (p.y - a.y) * dx) / length;
}

// Marks the points to keep between two that are kept; a stack instead of recursion.
void keep_between(const Polygon& line,
                  std::size_t first,
                  std::size_t last,
                  double tolerance,
                  std::vector<char>& kept) {
  std::vector<std::pair<std::size_t, std::size_t>> open{{first, last}};
  while (!open.empty()) {
    const auto [from, to] = open.back();
    open.pop_back();
    std::size_t far = from;
    double worst = tolerance;
    for (std::size_t i = from + 1; i < to; ++i) {
      const double off = distance_to_line(line[i], line[from], line[to]);
      if (off > worst) {
        worst = off;
        far = i;
      }
    }
    if (far != from) {
      kept[far] = 1;
      open.emplace_back(from, far);
      open.emplace_back(far, to);
    }
  }
}

void blur_lines(Field& field, int radius, bool across) {
  const int lines = across ? field.height : field.width;
  const int length = across ? field.width : field.height;
  std::vector<float> line(static_cast<std::size_t>(length));
  const auto cell = [&](int l, int i) -> float& {
    const int x = across ? i : l;
    const int y = across ? l : i;
    return field.values[static_cast<std::size_t>(y) * static_cast<std::size_t>(field.width) +
                        static_cast<std::size_t>(x)];
  };
  for (int l = 0; l < lines; ++l) {
    const auto at = [&](int i) { return cell(l, std::clamp(i, 0, length - 1)); };
    double sum = 0;
    for (int i = -radius; i <= radius; ++i) {
      sum += at(i);
    }
    for (int i = 0; i < length; ++i) {
      line[static_cast<std::size_t>(i)] = static_cast<float>(sum / (2 * radius + 1));
      sum += at(i + radius + 1) - at(i - radius);
    }
    for (int i = 0; i < length; ++i) {
      cell(l, i) = line[static_cast<std::size_t>(i)];
    }
  }
}

}  // namespace

Field opacity_of(const Picture& picture) {
  Field field = field_of(picture);
  for (std::size_t i = 0; i < field.values.size(); ++i) {
    field.values[i] = static_cast<float>(picture.rgba[4 * i + 3]) / 255.0F;
  }
  return field;
}

Field darkness_of(const Picture& picture) {
  Field field = field_of(picture);
  for (std::size_t i = 0; i < field.values.size(); ++i) {
    const std::uint8_t* pixel = &picture.rgba[4 * i];
    const float light =
        (0.2126F * static_cast<float>(pixel[0]) + 0.7152F * static_cast<float>(pixel[1]) +
         0.0722F * static_cast<float>(pixel[2])) /
        255.0F;
    const float alpha = static_cast<float>(pixel[3]) / 255.0F;
    field.values[i] = alpha * (1 - light);
  }
  return field;
}

Field smoothed(const Field& field, int radius) {
  Field out = field;
  for (int time = 0; time < 2 && radius > 0 && !out.values.empty(); ++time) {
    blur_lines(out, radius, true);
    blur_lines(out, radius, false);
  }
  return out;
}

std::vector<Polygon> contours(const Field& field, double level) {
  return Tracer(field, level).trace();
}

Polygon simplified(const Polygon& polygon, double tolerance) {
  if (polygon.size() < 3) {
    return {};
  }
  // A closed line is two open ones, from the first point to the one farthest from it.
  Polygon line = polygon;
  line.push_back(polygon.front());
  std::size_t far = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const auto off = [&](std::size_t at) {
      return std::hypot(line[at].x - line[0].x, line[at].y - line[0].y);
    };
    far = off(i) > off(far) ? i : far;
  }
  std::vector<char> kept(line.size());
  kept[0] = kept[far] = 1;
  keep_between(line, 0, far, tolerance, kept);
  keep_between(line, far, line.size() - 1, tolerance, kept);
  Polygon out;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    if (kept[i] != 0) {
      out.push_back(line[i]);
    }
  }
  return out.size() < 3 ? Polygon{} : out;
}

double area_of(const Polygon& polygon) {
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point& a = polygon[i];
    const Point& b = polygon[(i + 1) % polygon.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return std::abs(twice) / 2;
}

}  // namespace backmark::draw
