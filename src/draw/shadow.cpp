// Shadows as masks: the coverage of a picture, moved, blurred and laid over one another.
#include <algorithm>
#include <cmath>

#include "draw/inlay.h"
#include "draw/masks.h"

namespace backmark::draw {

namespace {

// Values 0 to 1, row by row.
struct Plane {
  int width = 0;
  int height = 0;
  std::vector<float> values;

  Plane(int across, int down)
      : width(across),
        height(down),
        values(static_cast<std::size_t>(across) * static_cast<std::size_t>(down)) {}
  float* row(int y) { return values.data() + static_cast<std::ptrdiff_t>(y) * width; }
  const float* row(int y) const {
    return values.data() + static_cast<std::ptrdiff_t>(y) * width;
  }
};

// Where one source pixel falls along one side: at `first` and at the one after it.
struct Fall {
  int first = 0;
  float here = 0;
  float next = 0;
};

// `count` source pixels, each no wider than one of the target, from `offset` on.
std::vector<Fall> falls(int count, double offset, double length) {
  std::vector<Fall> all(static_cast<std::size_t>(count));
  const double each = length / count;
  for (int i = 0; i < count; ++i) {
    const double from = offset + i * each;
    const double first = std::floor(from);
    const double over = std::max(0.0, from + each - (first + 1));
    all[static_cast<std::size_t>(i)] = {
        static_cast<int>(first), static_cast<float>(each - over), static_cast<float>(over)};
  }
  return all;
}

// How far each pixel of the plane is covered by a picture that fills `place` (in its pixels).
Plane coverage(const Picture& picture, PictureSize size, const Box& place) {
  Plane plane(size.width, size.height);
  const auto across = falls(picture.width, place.x, place.width);
  const auto down = falls(picture.height, place.y, place.height);
  std::vector<float> line(static_cast<std::size_t>(size.width) + 1);
  for (int y = 0; y < picture.height; ++y) {
    std::fill(line.begin(), line.end(), 0.0F);
    const std::uint8_t* opacity = picture.at(0, y) + 3;
    for (const Fall& fall : across) {
      if (*opacity != 0) {
        const float value = static_cast<float>(*opacity) / 255.0F;
        line[static_cast<std::size_t>(fall.first)] += fall.here * value;
        line[static_cast<std::size_t>(fall.first) + 1] += fall.next * value;
      }
      opacity += 4;
    }
    const Fall& fall = down[static_cast<std::size_t>(y)];
    float* here = plane.row(fall.first);
    float* next = plane.row(std::min(fall.first + 1, size.height - 1));
    for (int x = 0; x < size.width; ++x) {
      here[x] += fall.here * line[static_cast<std::size_t>(x)];
      next[x] += fall.next * line[static_cast<std::size_t>(x)];
    }
  }
  return plane;
}

// Moved by a whole and a part of a pixel; what comes from outside is nothing.
Plane moved(const Plane& plane, double dx, double dy) {
  const int right = static_cast<int>(std::floor(dx));
  const int down = static_cast<int>(std::floor(dy));
  const auto part_x = static_cast<float>(dx - right);
  const auto part_y = static_cast<float>(dy - down);
  Plane out(plane.width, plane.height);
  const auto add = [&](int by_x, int by_y, float share) {
    for (int y = std::max(0, by_y); y < std::min(plane.height, plane.height + by_y); ++y) {
      const float* in = plane.row(y - by_y);
      float* to = out.row(y);
      for (int x = std::max(0, by_x); x < std::min(plane.width, plane.width + by_x); ++x) {
        to[x] += share * in[x - by_x];
      }
    }
  };
  add(right, down, (1 - part_x) * (1 - part_y));
  add(right + 1, down, part_x * (1 - part_y));
  add(right, down + 1, (1 - part_x) * part_y);
  add(right + 1, down + 1, part_x * part_y);
  return out;
}

// A running mean of 2 * reach + 1 pixels along each row.
void mean_across(Plane& plane, int reach) {
  const float share = 1.0F / static_cast<float>(2 * reach + 1);
  std::vector<float> source(static_cast<std::size_t>(plane.width));
  for (int y = 0; y < plane.height; ++y) {
    float* line = plane.row(y);
    std::copy_n(line, plane.width, source.begin());
    float sum = 0;
    for (int x = 0; x < std::min(reach, plane.width); ++x) {
      sum += source[static_cast<std::size_t>(x)];
    }
    for (int x = 0; x < plane.width; ++x) {
      sum += x + reach < plane.width ? source[static_cast<std::size_t>(x + reach)] : 0.0F;
      sum -= x > reach ? source[static_cast<std::size_t>(x - reach - 1)] : 0.0F;
      line[x] = sum * share;
    }
  }
}

// The same down each column, all columns at once.
void mean_down(Plane& plane, int reach) {
  const float share = 1.0F / static_cast<float>(2 * reach + 1);
  const Plane source = plane;
  std::vector<float> sum(static_cast<std::size_t>(plane.width));
  const auto add = [&](int y, float sign) {
    const float* in = source.row(y);
    for (float& value : sum) {
      value += sign * *in++;
    }
  };
  for (int y = 0; y < std::min(reach, plane.height); ++y) {
    add(y, 1);
  }
  for (int y = 0; y < plane.height; ++y) {
    if (y + reach < plane.height) {
      add(y + reach, 1);
    }
    if (y > reach) {
      add(y - reach - 1, -1);
    }
    std::transform(sum.begin(), sum.end(), plane.row(y),
                   [share](float value) { return value * share; });
  }
}

// Three running means approach a normal curve: variance of one is (width^2 - 1) / 12.
void blur(Plane& plane, double deviation_px) {
  const double width = std::sqrt(4 * deviation_px * deviation_px + 1);
  const int reach = std::max(0, static_cast<int>(std::lround((width - 1) / 2)));
  for (int pass = 0; pass < 3 && reach > 0; ++pass) {
    mean_across(plane, reach);
    mean_down(plane, reach);
  }
}

// What all shadows reach; its corner lies whole pixels from that of the box.
Box reach_of(const Box& box, const std::vector<Shadow>& shadows, double pixels_per_mm) {
  Box area = box;
  for (const Shadow& shadow : shadows) {
    const double far = 3 * shadow.blur;
    const double left = std::min(area.x, box.x + shadow.dx - far);
    const double top = std::min(area.y, box.y + shadow.dy - far);
    const double right = std::max(area.right(), box.right() + shadow.dx + far);
    const double bottom = std::max(area.bottom(), box.bottom() + shadow.dy + far);
    area = {left, top, right - left, bottom - top};
  }
  const auto whole = [&](double mm) { return std::ceil(mm * pixels_per_mm); };
  const double left = whole(box.x - area.x) / pixels_per_mm;
  const double top = whole(box.y - area.y) / pixels_per_mm;
  return {box.x - left, box.y - top, (whole(area.right() - box.x + left) + 1) / pixels_per_mm,
          (whole(area.bottom() - box.y + top) + 1) / pixels_per_mm};
}

}  // namespace

ReadyShadow shadow_of(const Picture& picture,
                      const Box& box,
                      const std::vector<Shadow>& shadows,
                      double pixels_per_mm) {
  // A pixel of the picture may not be larger than one of the shadow.
  const double per_mm =
      std::min({pixels_per_mm, picture.width / box.width, picture.height / box.height});
  const Box area = reach_of(box, shadows, per_mm);
  const PictureSize size{static_cast<int>(std::lround(area.width * per_mm)),
                         static_cast<int>(std::lround(area.height * per_mm))};
  const Plane cover = coverage(picture, size,
                               {(box.x - area.x) * per_mm, (box.y - area.y) * per_mm,
                                box.width * per_mm, box.height * per_mm});
  std::vector<float> light(cover.values.size(), 1.0F);
  for (const Shadow& shadow : shadows) {
    Plane cast = moved(cover, shadow.dx * per_mm, shadow.dy * per_mm);
    blur(cast, shadow.blur * per_mm);
    const auto depth = static_cast<float>(shadow.colour.alpha);
    for (std::size_t i = 0; i < light.size(); ++i) {
      light[i] *= 1 - depth * std::clamp(cast.values[i], 0.0F, 1.0F);
    }
  }
  std::vector<std::uint8_t> opacity(light.size());
  std::transform(light.begin(), light.end(), opacity.begin(), [](float left) {
    return static_cast<std::uint8_t>((1 - left) * 255.0F + 0.5F);
  });
  ReadyShadow ready;
  ready.box = area;
  ready.inlay.width = size.width;
  ready.inlay.height = size.height;
  ready.inlay.flat = shadows.front().colour;
  ready.inlay.mask = packed_mask(std::move(opacity), size.width);
  return ready;
}

}  // namespace backmark::draw
