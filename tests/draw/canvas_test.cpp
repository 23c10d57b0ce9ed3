#include "draw/canvas.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace backmark;
using namespace backmark::draw;

namespace {

Picture half_transparent_square() {
  Canvas canvas = Canvas::picture({10, 10}, 2);
  canvas.rectangle({0, 0, 5, 10});
  canvas.fill(Colour{1, 0, 0, 1});
  return canvas.snapshot();
}

}  // namespace

TEST_CASE("a millimetre on a picture is as many pixels as asked") {
  Canvas canvas = Canvas::picture({10, 4}, 12);
  canvas.rectangle({2, 1, 3, 2});
  canvas.fill(ink);
  const Picture picture = canvas.snapshot();
  CHECK(picture.width == 120);
  CHECK(picture.height == 48);
  int dark = 0;
  for (int x = 0; x < picture.width; ++x) {
    dark += picture.at(x, 20)[3] == 255 ? 1 : 0;
  }
  CHECK(dark == 36);
}

TEST_CASE("a PNG gives back the pixels it was made from") {
  const Picture picture = half_transparent_square();
  const auto again = decode_picture(encode_png(picture));
  REQUIRE(again);
  CHECK(again->rgba == picture.rgba);
}

TEST_CASE("a JPEG gives back a plain colour within two steps") {
  Canvas canvas = Canvas::picture({8, 8}, 4);
  canvas.flood(Colour::hex(0x8B391D));
  const auto again = decode_picture(encode_jpeg(canvas.snapshot(), 95));
  REQUIRE(again);
  CHECK(std::abs(again->at(10, 10)[0] - 0x8B) <= 2);
  CHECK(std::abs(again->at(10, 10)[1] - 0x39) <= 2);
  CHECK(std::abs(again->at(10, 10)[2] - 0x1D) <= 2);
}

TEST_CASE("a file that is no picture says so") {
  const auto refused = decode_picture("%PDF-1.5 not a picture");
  REQUIRE(!refused);
  CHECK(refused.problem().what == "the file is neither a PNG nor a JPEG picture");
}

TEST_CASE("a PNG cut short is damaged, not half shown") {
  const std::string bytes = encode_png(half_transparent_square());
  const auto refused = decode_picture(std::string_view(bytes).substr(0, bytes.size() / 2));
  REQUIRE(!refused);
  CHECK(refused.problem().fault == Fault::bad_input);
}

TEST_CASE("a picture of 400 megapixels is refused before it is decoded") {
  std::string bytes = encode_png(half_transparent_square());
  bytes[16] = 0;
  bytes[17] = 0;
  bytes[18] = 0x4E;  // 20000 wide
  bytes[19] = 0x20;
  bytes[20] = 0;
  bytes[21] = 0;
  bytes[22] = 0x4E;  // 20000 high
  bytes[23] = 0x20;
  const auto refused = decode_picture(bytes);
  REQUIRE(!refused);
  CHECK(refused.problem().what ==
        "the picture has 400 megapixels, more than the 120 that are taken");
}

TEST_CASE("making a picture smaller keeps its mean and does not mix hidden colour in") {
  const Picture picture = half_transparent_square();
  const Picture small = resized(picture, 5, 5);
  CHECK(small.at(0, 2)[3] == 255);
  CHECK(small.at(4, 2)[3] == 0);
  CHECK(small.at(2, 2)[0] == 255);  // the seam is red, only thinner
  CHECK(small.at(2, 2)[3] > 60);
  CHECK(small.at(2, 2)[3] < 195);
}

TEST_CASE("contrast follows WCAG 2.2: black on white is 21") {
  CHECK(contrast({0, 0, 0, 1}, white) == doctest::Approx(21.0));
  CHECK(contrast(Colour::hex(0x777777), white) == doctest::Approx(4.48).epsilon(0.002));
}

TEST_CASE("pages come out as a PDF of as many pages, twice the same") {
  const auto draw_two = [] {
    Canvas canvas = Canvas::pages({100, 120}, 3);
    canvas.line({-3, 10}, {50, 10}, copper, {0.5});
    REQUIRE(canvas.next_page());
    canvas.cutout(half_transparent_square(), {10, 10, 20, 20});
    canvas.destination("here", {10, 10});
    CHECK(canvas.page() == 1);
    CHECK(canvas.marks().at(0).box.x == doctest::Approx(10));
    auto bytes = canvas.finish();
    REQUIRE(bytes);
    return *bytes;
  };
  const std::string bytes = draw_two();
  CHECK(bytes.substr(0, 5) == "%PDF-");
  CHECK(bytes.find("/Count 2") != std::string::npos);
  CHECK(bytes.size() == draw_two().size());
}
