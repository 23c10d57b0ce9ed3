// Pictures as plain values: eight bits a channel, colour not multiplied by opacity.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/file.h"
#include "base/result.h"

namespace backmark::draw {

struct Picture {
  int width = 0;
  int height = 0;
  // Red, green, blue, alpha, row by row from the top; rgba.size() == 4 * width * height.
  std::vector<std::uint8_t> rgba;

  bool empty() const { return rgba.empty(); }
  std::uint8_t* at(int x, int y) { return &rgba[offset(x, y)]; }
  const std::uint8_t* at(int x, int y) const { return &rgba[offset(x, y)]; }

 private:
  std::size_t offset(int x, int y) const {
    return (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
            static_cast<std::size_t>(x)) *
           4;
  }
};

// All transparent black.
Picture blank_picture(int width, int height);

// Pictures with more pixels than this are refused before any memory is taken.
inline constexpr std::int64_t most_pixels = 120'000'000;

struct PictureSize {
  int width = 0;
  int height = 0;
};

// Size from the head of a PNG or JPEG, without decoding it; of a JPEG as it is held upright.
// Problems: bad_input (neither, or cut short).
Result<PictureSize> picture_size(std::string_view bytes);

// PNG or JPEG by its first bytes. Problems: bad_input (neither, damaged), refused (too large).
// A JPEG is turned upright by its orientation tag, its colours brought from its profile to
// sRGB; it may come smaller, but no side under that of `least`, if that is given.
Result<Picture> decode_picture(std::string_view bytes, PictureSize least = {});

// As decode_picture; problems name the file. Problems also: not_found, io.
Result<Picture> read_picture(const Path& path);

// Same picture, same bytes.
std::string encode_png(const Picture& picture);

// Quality 1 to 100, no chroma subsampling; transparent parts are laid on white.
std::string encode_jpeg(const Picture& picture, int quality);

// Triangle filter in opacity-weighted colour; both sides at least 1.
Picture resized(const Picture& picture, int width, int height);

// The pixels of a box in whole pixels, which must lie inside.
Picture cropped(const Picture& picture, int x, int y, PictureSize size);

}  // namespace backmark::draw
