#include "photo/sprite.h"

#include <doctest/doctest.h>

#include "draw/picture.h"

using namespace backmark;

namespace {

draw::Picture plain(int width, int height, std::uint8_t alpha) {
  draw::Picture picture = draw::blank_picture(width, height);
  for (std::size_t i = 0; i < picture.rgba.size(); i += 4) {
    picture.rgba[i] = 200;
    picture.rgba[i + 3] = alpha;
  }
  return picture;
}

}  // namespace

TEST_CASE("small copies keep the shape of their picture and never enlarge it") {
  const auto sprites = photo::sprites_of(draw::encode_jpeg(plain(300, 100, 255), 90));
  REQUIRE(sprites);
  for (const photo::Sprite& sprite : *sprites) {
    const auto size = draw::picture_size(sprite.bytes);
    REQUIRE(size);
    CHECK(size->width == std::min(300, sprite.size));
    CHECK(std::abs(size->height * 3 - size->width) <= 3);
    CHECK_FALSE(sprite.png);
  }
}

TEST_CASE("a cut-out stays a cut-out at every size") {
  const auto sprites = photo::sprites_of(draw::encode_png(plain(600, 600, 0)));
  REQUIRE(sprites);
  for (const photo::Sprite& sprite : *sprites) {
    CHECK(sprite.png);
    const auto picture = draw::decode_picture(sprite.bytes);
    REQUIRE(picture);
    CHECK(picture->at(0, 0)[3] == 0);
  }
}

TEST_CASE("a picture that claims more pixels than memory could hold is refused by its head") {
  std::string bomb = draw::encode_png(plain(4, 4, 255));
  bomb[16] = '\x7f';  // width, the first of four bytes (PNG specification, 11.2.2)
  bomb[20] = '\x7f';
  const auto sprites = photo::sprites_of(bomb);
  REQUIRE_FALSE(sprites);
  CHECK(sprites.problem().fault == Fault::refused);
}
