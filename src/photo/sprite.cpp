#include "photo/sprite.h"

#include <algorithm>
#include <cmath>

#include "draw/picture.h"

namespace backmark::photo {

namespace {

constexpr int jpeg_quality = 88;

bool see_through(const draw::Picture& picture) {
  for (std::size_t i = 3; i < picture.rgba.size(); i += 4) {
    if (picture.rgba[i] != 255) {
      return true;
    }
  }
  return false;
}

draw::Picture fitted(const draw::Picture& picture, int size) {
  const int longest = std::max(picture.width, picture.height);
  if (longest <= size) {
    return picture;
  }
  const double share = static_cast<double>(size) / longest;
  const auto scaled = [share](int side) {
    return std::max(1, static_cast<int>(std::lround(side * share)));
  };
  return draw::resized(picture, scaled(picture.width), scaled(picture.height));
}

}  // namespace

Result<std::array<Sprite, sprite_sizes.size()>> sprites_of(std::string_view bytes) {
  auto picture = draw::decode_picture(bytes);
  if (!picture) {
    return picture.problem();
  }
  const bool png = see_through(*picture);
  std::array<Sprite, sprite_sizes.size()> sprites;
  draw::Picture larger = *std::move(picture);
  for (std::size_t i = 0; i < sprites.size(); ++i) {
    larger = fitted(larger, sprite_sizes[i]);
    sprites[i] = {sprite_sizes[i],
                  png ? draw::encode_png(larger) : draw::encode_jpeg(larger, jpeg_quality),
                  png};
  }
  return sprites;
}

}  // namespace backmark::photo
