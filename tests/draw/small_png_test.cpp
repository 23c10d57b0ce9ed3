#include "draw/small_png.h"

#include <algorithm>
#include <cstdlib>
#include <doctest/doctest.h>

#include "draw/canvas.h"

using namespace backmark;
using namespace backmark::draw;

namespace {

Picture sunset() {
  Canvas canvas = Canvas::picture({20, 10}, 30);
  canvas.ellipse({10, 5}, 9, 4.5);
  canvas.fill(RadialGradient{
      {7, 3}, 0, {10, 5}, 10, {{0, Colour::hex(0xFFF6D0)}, {0.5, copper}, {1, ink}}});
  return canvas.snapshot();
}

}  // namespace

TEST_CASE("a small PNG is the same picture to the eye, and less than half the bytes") {
  const Picture before = sunset();
  const std::string bytes = encode_small_png(before);
  const auto after = decode_picture(bytes);
  REQUIRE(after);
  REQUIRE(after->width == before.width);
  REQUIRE(after->height == before.height);
  int worst = 0;
  double sum = 0;
  for (std::size_t i = 0; i < before.rgba.size(); i += 4) {
    for (std::size_t c = 0; c < 4; ++c) {
      if (before.rgba[i + 3] == 0) {
        CHECK(after->rgba[i + 3] == 0);
        break;
      }
      if (before.rgba[i + 3] == 255) {
        const int off = std::abs(int{before.rgba[i + c]} - int{after->rgba[i + c]});
        worst = std::max(worst, off);
        sum += off;
      }
    }
  }
  CHECK(worst <= 24);
  CHECK(sum / static_cast<double>(before.rgba.size()) < 2);
  CHECK(bytes.size() * 2 < encode_png(before).size());
  CHECK(bytes == encode_small_png(before));
}

TEST_CASE("a picture of a few colours is kept exactly, and an empty one stays empty") {
  Picture flag = blank_picture(3, 1);
  const std::uint8_t colours[] = {200, 10, 10, 255, 10, 200, 10, 255, 0, 0, 0, 0};
  std::copy(std::begin(colours), std::end(colours), flag.rgba.begin());
  const auto back = decode_picture(encode_small_png(flag));
  REQUIRE(back);
  CHECK(back->rgba == flag.rgba);
  const auto nothing = decode_picture(encode_small_png(blank_picture(5, 5)));
  REQUIRE(nothing);
  CHECK(nothing->rgba == blank_picture(5, 5).rgba);
}
