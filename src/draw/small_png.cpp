#include "draw/small_png.h"

#include <algorithm>
#include <array>
#include <memory>
#include <png.h>
#include <queue>
#include <vector>

#include "base/result.h"
#include "base/text.h"

namespace backmark::draw {
namespace {

constexpr std::size_t most_colours = 256;

// All pixels of nearly one colour: their mean and how many.
struct Shade {
  std::array<double, 4> mean{};
  double count = 0;
  std::uint32_t key = 0;
};

// Red, green, blue to six bits, opacity to three; everything clear is one key.
std::uint32_t key_of(const std::uint8_t* p) {
  if (p[3] == 0) {
    return 0;
  }
  return ((p[0] >> 2U) << 15U) | ((p[1] >> 2U) << 9U) | ((p[2] >> 2U) << 3U) | (p[3] >> 5U);
}
constexpr std::size_t keys = 1U << 21U;

std::vector<Shade> shades_of(const Picture& picture) {
  std::vector<std::uint32_t> place(keys, 0);
  std::vector<Shade> shades;
  for (std::size_t i = 0; i < picture.rgba.size(); i += 4) {
    const std::uint8_t* p = &picture.rgba[i];
    const std::uint32_t key = key_of(p);
    if (place[key] == 0) {
      shades.push_back({.key = key});
      place[key] = static_cast<std::uint32_t>(shades.size());
    }
    Shade& shade = shades[place[key] - 1];
    shade.count += 1;
    for (std::size_t c = 0; c < 4 && p[3] != 0; ++c) {
      shade.mean[c] += p[c];
    }
  }
  for (Shade& shade : shades) {
    for (double& value : shade.mean) {
      value /= shade.count;
    }
  }
  return shades;
}

// Shades from first to last that share one colour of the palette.
struct Group {
  std::size_t first = 0;
  std::size_t last = 0;
  std::array<double, 4> mean{};
  double spread = 0;  // squared distance from the mean along the widest channel, summed
  std::size_t widest = 0;
};

Group group_of(const std::vector<Shade>& shades, std::size_t first, std::size_t last) {
  Group group{first, last};
  double count = 0;
  std::array<double, 4> squares{};
  for (std::size_t i = first; i < last; ++i) {
    count += shades[i].count;
    for (std::size_t c = 0; c < 4; ++c) {
      group.mean[c] += shades[i].count * shades[i].mean[c];
      squares[c] += shades[i].count * shades[i].mean[c] * shades[i].mean[c];
    }
  }
  for (std::size_t c = 0; c < 4; ++c) {
    group.mean[c] /= count;
    const double spread = squares[c] - count * group.mean[c] * group.mean[c];
    if (spread > group.spread) {
      group.spread = spread;
      group.widest = c;
    }
  }
  return group;
}

std::vector<Group> split_into_groups(std::vector<Shade>& shades) {
  const auto less = [](const Group& a, const Group& b) {
    return a.spread != b.spread ? a.spread < b.spread : a.first > b.first;
  };
  std::priority_queue<Group, std::vector<Group>, decltype(less)> open(less);
  open.push(group_of(shades, 0, shades.size()));
  std::vector<Group> done;
  while (!open.empty() && open.size() + done.size() < most_colours) {
    const Group group = open.top();
    open.pop();
    const auto begin = shades.begin() + static_cast<std::ptrdiff_t>(group.first);
    const auto end = shades.begin() + static_cast<std::ptrdiff_t>(group.last);
    const auto middle = std::stable_partition(begin, end, [&](const Shade& shade) {
      return shade.mean[group.widest] <= group.mean[group.widest];
    });
    if (middle == begin || middle == end) {
      done.push_back(group);
      continue;
    }
    const auto at = static_cast<std::size_t>(middle - shades.begin());
    open.push(group_of(shades, group.first, at));
    open.push(group_of(shades, at, group.last));
  }
  for (; !open.empty(); open.pop()) {
    done.push_back(open.top());
  }
  return done;
}

struct FreePng {
  void operator()(png_image* image) const { png_image_free(image); }
};

}  // namespace

std::string encode_small_png(const Picture& picture) {
  std::vector<Shade> shades = shades_of(picture);
  const std::vector<Group> groups = split_into_groups(shades);
  std::vector<std::uint8_t> colour_of(keys, 0);
  std::vector<std::uint8_t> palette;
  for (std::size_t g = 0; g < groups.size(); ++g) {
    for (std::size_t i = groups[g].first; i < groups[g].last; ++i) {
      colour_of[shades[i].key] = static_cast<std::uint8_t>(g);
    }
    for (const double value : groups[g].mean) {
      palette.push_back(static_cast<std::uint8_t>(value + 0.5));
    }
  }
  std::vector<std::uint8_t> pixels;
  pixels.reserve(picture.rgba.size() / 4);
  for (std::size_t i = 0; i < picture.rgba.size(); i += 4) {
    pixels.push_back(colour_of[key_of(&picture.rgba[i])]);
  }
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  image.width = static_cast<png_uint_32>(picture.width);
  image.height = static_cast<png_uint_32>(picture.height);
  image.format = PNG_FORMAT_RGBA_COLORMAP;
  image.colormap_entries = static_cast<png_uint_32>(groups.size());
  const std::unique_ptr<png_image, FreePng> owner(&image);
  std::string bytes(PNG_IMAGE_PNG_SIZE_MAX(image), '\0');
  png_alloc_size_t size = bytes.size();
  if (png_image_write_to_memory(&image, bytes.data(), &size, 0, pixels.data(), 0,
                                palette.data()) == 0) {
    throw BrokenPromise(
        fmt::format("a picture could not be written as PNG: {}", image.message));
  }
  bytes.resize(size);
  return bytes;
}

}  // namespace backmark::draw
