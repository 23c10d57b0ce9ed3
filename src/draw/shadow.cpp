// Shadows as masks: the coverage of a picture, moved, blurred and laid over one another.
#include <algorithm>
#include <cmath>
#include <numeric>

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

// Every `factor` by `factor` pixels as one, their mean; both sides are multiples of it.
Plane shrunk(const Plane& plane, int factor) {
  Plane out(plane.width / factor, plane.height / factor);
  const float share = 1.0F / static_cast<float>(factor * factor);
  for (int y = 0; y < plane.height; ++y) {
    const float* in = plane.row(y);
    float* to = out.row(y / factor);
    for (int x = 0; x < out.width; ++x) {
      for (int part = 0; part < factor; ++part) {
        to[x] += share * *in++;
      }
    }
  }
  return out;
}

// Where a pixel of the large plane lies among those of the small one.
struct Between {
  int first = 0;
  int next = 0;
  float share = 0;  // of the next
};

std::vector<Between> between(int large, int factor, double moved) {
  const int small = large / factor;
  std::vector<Between> all(static_cast<std::size_t>(large));
  for (int i = 0; i < large; ++i) {
    const double at = (i + 0.5 - moved) / factor - 0.5;
    const double first = std::floor(at);
    const int whole = static_cast<int>(first);
    all[static_cast<std::size_t>(i)] = {std::clamp(whole, 0, small - 1),
                                        std::clamp(whole + 1, 0, small - 1),
                                        static_cast<float>(at - first)};
  }
  return all;
}

// The plane `factor` times as large and moved by (dx, dy) large pixels, in between by lines;
// what comes from outside is as its edge. Calls take(index, value) for each pixel.
template <typename Take>
void each_enlarged(
    const Plane& plane, PictureSize size, int factor, Point move, const Take& take) {
  const auto across = between(size.width, factor, move.x);
  std::vector<float> line(static_cast<std::size_t>(plane.width));
  std::size_t index = 0;
  for (const Between& down : between(size.height, factor, move.y)) {
    const float* first = plane.row(down.first);
    const float* next = plane.row(down.next);
    for (std::size_t x = 0; x < line.size(); ++x) {
      line[x] = first[x] + down.share * (next[x] - first[x]);
    }
    for (const Between& at : across) {
      const float here = line[static_cast<std::size_t>(at.first)];
      take(index++, here + at.share * (line[static_cast<std::size_t>(at.next)] - here));
    }
  }
}

// A running mean of 2 * reach + 1 pixels along each row.
void mean_across(const Plane& from, Plane& to, int reach) {
  const float share = 1.0F / static_cast<float>(2 * reach + 1);
  for (int y = 0; y < from.height; ++y) {
    const float* in = from.row(y);
    float* out = to.row(y);
    float sum = 0;
    for (int x = 0; x < std::min(reach, from.width); ++x) {
      sum += in[x];
    }
    for (int x = 0; x < from.width; ++x) {
      sum += x + reach < from.width ? in[x + reach] : 0.0F;
      sum -= x > reach ? in[x - reach - 1] : 0.0F;
      out[x] = sum * share;
    }
  }
}

// The same down each column, all columns at once.
void mean_down(const Plane& from, Plane& to, int reach) {
  const float share = 1.0F / static_cast<float>(2 * reach + 1);
  std::vector<float> sum(static_cast<std::size_t>(from.width));
  const auto add = [&](int y, float sign) {
    const float* in = from.row(y);
    for (float& value : sum) {
      value += sign * *in++;
    }
  };
  for (int y = 0; y < std::min(reach, from.height); ++y) {
    add(y, 1);
  }
  for (int y = 0; y < from.height; ++y) {
    if (y + reach < from.height) {
      add(y + reach, 1);
    }
    if (y > reach) {
      add(y - reach - 1, -1);
    }
    std::transform(sum.begin(), sum.end(), to.row(y),
                   [share](float value) { return value * share; });
  }
}

// Three running means approach a normal curve: the variance of one of `width` pixels is
// (width^2 - 1) / 12. Widths are odd, so the first means are the narrower ones, as many as come
// nearest to the deviation.
void blur(Plane& plane, double deviation_px) {
  const double variance = 12 * deviation_px * deviation_px;
  const int reach = std::max(0, static_cast<int>((std::sqrt(variance / 3 + 1) - 1) / 2));
  const double width = 2 * reach + 1;
  const double narrow =
      std::round((3 * (width + 2) * (width + 2) - 3 - variance) / (4 * width + 4));
  Plane between_passes(plane.width, plane.height);
  for (int pass = 0; pass < 3; ++pass) {
    const int this_reach = pass < narrow ? reach : reach + 1;
    mean_across(plane, between_passes, this_reach);
    mean_down(between_passes, plane, this_reach);
  }
}

// How much coarser than the sharpest one a shadow may be reckoned: two pixels a deviation.
int factor_for(const Shadow& shadow, double pixels_per_mm) {
  return std::max(1, static_cast<int>(shadow.blur * pixels_per_mm / 2));
}

// What all shadows reach, in pixels a multiple of `step`; its corner lies whole pixels from
// that of the box.
Box reach_of(const Box& box,
             const std::vector<Shadow>& shadows,
             double pixels_per_mm,
             int step) {
  Box area = box;
  for (const Shadow& shadow : shadows) {
    const double far = 3 * shadow.blur;
    // It is blurred where the picture lies, then moved.
    const double left = std::min(area.x, box.x + std::min(0.0, shadow.dx) - far);
    const double top = std::min(area.y, box.y + std::min(0.0, shadow.dy) - far);
    const double right = std::max(area.right(), box.right() + std::max(0.0, shadow.dx) + far);
    const double bottom =
        std::max(area.bottom(), box.bottom() + std::max(0.0, shadow.dy) + far);
    area = {left, top, right - left, bottom - top};
  }
  const double left = std::ceil((box.x - area.x) * pixels_per_mm);
  const double top = std::ceil((box.y - area.y) * pixels_per_mm);
  // One more, since a pixel of the picture may lie across the last border.
  const auto side = [step](double pixels) { return std::ceil((pixels + 1) / step) * step; };
  return {box.x - left / pixels_per_mm, box.y - top / pixels_per_mm,
          side((area.right() - box.x) * pixels_per_mm + left) / pixels_per_mm,
          side((area.bottom() - box.y) * pixels_per_mm + top) / pixels_per_mm};
}

}  // namespace

ReadyShadow shadow_of(const Picture& picture,
                      const Box& box,
                      const std::vector<Shadow>& shadows,
                      double pixels_per_mm) {
  // A pixel of the picture may not be larger than one of the shadow.
  const double per_mm =
      std::min({pixels_per_mm, picture.width / box.width, picture.height / box.height});
  int step = 1;
  for (const Shadow& shadow : shadows) {
    step = std::lcm(step, factor_for(shadow, per_mm));
  }
  const Box area = reach_of(box, shadows, per_mm, step);
  const PictureSize size{static_cast<int>(std::lround(area.width * per_mm)),
                         static_cast<int>(std::lround(area.height * per_mm))};
  const Plane cover = coverage(picture, size,
                               {(box.x - area.x) * per_mm, (box.y - area.y) * per_mm,
                                box.width * per_mm, box.height * per_mm});
  std::vector<float> light(cover.values.size(), 1.0F);
  for (const Shadow& shadow : shadows) {
    const int factor = factor_for(shadow, per_mm);
    Plane cast = shrunk(cover, factor);
    // A coarse pixel blurs too: by 1/12 of its square, and by 1/6 where it is made large again.
    const double deviation = shadow.blur * per_mm / factor;
    blur(cast, std::sqrt(std::max(0.0, deviation * deviation - (factor > 1 ? 0.25 : 0.0))));
    const auto depth = static_cast<float>(shadow.colour.alpha);
    each_enlarged(cast, size, factor, {shadow.dx * per_mm, shadow.dy * per_mm},
                  [&](std::size_t i, float value) { light[i] *= 1 - depth * value; });
  }
  std::vector<std::uint8_t> opacity(light.size());
  std::transform(light.begin(), light.end(), opacity.begin(), [](float left) {
    return static_cast<std::uint8_t>(std::clamp((1 - left) * 255.0F + 0.5F, 0.0F, 255.0F));
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
