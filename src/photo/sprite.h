// Small copies of a photograph, for tables of many pieces.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "base/result.h"

namespace backmark::photo {

// Longest sides in pixels, largest first.
inline constexpr std::array<int, 5> sprite_sizes = {512, 256, 128, 64, 32};

struct Sprite {
  int size = 0;
  std::string bytes;  // PNG where anything is transparent, else JPEG
  bool png = false;
};

// One of every size; a picture smaller than a size is not enlarged. Problems: those of
// draw::decode_picture.
Result<std::array<Sprite, sprite_sizes.size()>> sprites_of(std::string_view bytes);

}  // namespace backmark::photo
