#include "draw/jpeg_tags.h"

#include <doctest/doctest.h>

using namespace backmark;
using draw::Picture;

namespace {

// Red at the left half, blue at the right, 16 by 8 pixels.
std::string two_halves() {
  Picture picture = draw::blank_picture(16, 8);
  for (int y = 0; y < 8; ++y) {
    for (int x = 0; x < 16; ++x) {
      picture.at(x, y)[x < 8 ? 0 : 2] = 255;
      picture.at(x, y)[3] = 255;
    }
  }
  return draw::encode_jpeg(picture, 95);
}

// The head of a file as CIPA DC-008 lays it out: APP1, "Exif", a TIFF head, one entry 0x0112.
std::string with_orientation(const std::string& jpeg, char value, bool little) {
  std::string tiff = little ? std::string("II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0", 18)
                            : std::string("MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01", 18);
  tiff += little ? std::string{value, 0, 0, 0} : std::string{0, value, 0, 0};
  tiff += std::string(4, '\0');
  const std::string content = std::string("Exif\0\0", 6) + tiff;
  const auto length = content.size() + 2;
  std::string head = "\xFF\xE1";
  head += static_cast<char>(length / 256);
  head += static_cast<char>(length % 256);
  return jpeg.substr(0, 2) + head + content + jpeg.substr(2);
}

bool is_red(const std::uint8_t* pixel) {
  return pixel[0] > 180 && pixel[2] < 80;
}

}  // namespace

TEST_CASE("a photograph taken with the camera held upright stands upright") {
  for (const bool little : {true, false}) {
    // 6: the stored top row is the right side of the scene, so turning clockwise sets it
    // upright (CIPA DC-008, orientation); the left of the stored picture comes to the top.
    const std::string turned = with_orientation(two_halves(), 6, little);
    CHECK(draw::jpeg_orientation(turned) == 6);
    CHECK(draw::picture_size(turned)->width == 8);
    CHECK(draw::picture_size(turned)->height == 16);
    const auto picture = draw::decode_picture(turned);
    REQUIRE(picture);
    CHECK(picture->width == 8);
    CHECK(is_red(picture->at(4, 1)));
    CHECK_FALSE(is_red(picture->at(4, 14)));
  }
  CHECK_FALSE(is_red(draw::decode_picture(with_orientation(two_halves(), 8, true))->at(4, 1)));
  CHECK_FALSE(is_red(draw::decode_picture(with_orientation(two_halves(), 3, true))->at(1, 4)));
  CHECK_FALSE(is_red(draw::decode_picture(with_orientation(two_halves(), 2, true))->at(1, 4)));
  CHECK(is_red(draw::decode_picture(with_orientation(two_halves(), 4, true))->at(1, 4)));
}

TEST_CASE("a head that is cut short or makes no sense leaves the picture as it is") {
  const std::string whole = with_orientation(two_halves(), 6, true);
  CHECK(draw::jpeg_orientation(with_orientation(two_halves(), 9, true)) == 1);
  CHECK(draw::jpeg_orientation(two_halves()) == 1);
  for (std::size_t length = 0; length < 40; ++length) {
    CHECK(draw::jpeg_orientation(whole.substr(0, length)) <= 8);
    CHECK(draw::jpeg_profile(whole.substr(0, length)).empty());
  }
}
