#include "draw/inlay.h"

#include <cmath>
#include <doctest/doctest.h>
#include <zlib.h>

#include "base/text.h"
#include "draw/jpeg_tags.h"
#include "draw/pdf.h"
#include "poppler.h"

using namespace backmark;
using namespace backmark::draw;

namespace {

// A disc in red on nothing.
Picture disc(int across) {
  Picture picture = blank_picture(across, across);
  const double middle = across / 2.0;
  for (int y = 0; y < across; ++y) {
    for (int x = 0; x < across; ++x) {
      picture.at(x, y)[0] = 200;
      const bool inside = std::hypot(x + 0.5 - middle, y + 0.5 - middle) < 0.4 * across;
      picture.at(x, y)[3] = inside ? 255 : 0;
    }
  }
  return picture;
}

Picture filled(int width, int height) {
  Picture picture = blank_picture(width, height);
  std::fill(picture.rgba.begin(), picture.rgba.end(), std::uint8_t{255});
  return picture;
}

// The opacities that a reader of the file sees (RFC 1950, then TIFF predictor 2).
std::vector<std::uint8_t> opacities(const Inlay& inlay) {
  std::vector<std::uint8_t> all(static_cast<std::size_t>(inlay.width) *
                                static_cast<std::size_t>(inlay.height));
  uLongf size = all.size();
  REQUIRE(uncompress(all.data(), &size, reinterpret_cast<const Bytef*>(inlay.mask.data()),
                     inlay.mask.size()) == Z_OK);
  REQUIRE(size == all.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (i % static_cast<std::size_t>(inlay.width) != 0) {
      all[i] = static_cast<std::uint8_t>(all[i] + all[i - 1]);
    }
  }
  return all;
}

int times(const std::string& text, const std::string& word) {
  int count = 0;
  for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    ++count;
  }
  return count;
}

// A segment as applications write them (ISO/IEC 10918-1, B.2.4.6).
std::string segment(char kind, const std::string& content) {
  std::string all{'\xFF', kind, static_cast<char>((content.size() + 2) / 256),
                  static_cast<char>((content.size() + 2) % 256)};
  return all + content;
}

}  // namespace

TEST_CASE("a cut-out keeps every opacity, and stands in the PDF as a JPEG with a mask") {
  const Picture picture = disc(60);
  const Inlay inlay = inlay_of(picture);
  const auto seen = opacities(inlay);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    REQUIRE(seen[i] == picture.rgba[4 * i + 3]);
  }
  Canvas canvas = Canvas::pages({100, 100}, 3);
  canvas.cutout(picture, {10, 10, 40, 40});
  canvas.cutout(filled(30, 20), {60, 60, 30, 20});
  canvas.cutout(filled(30, 20), {160, 60, 30, 20});  // off the paper
  canvas.cutout(filled(30, 20), {60, 60, 0, 20});
  const auto pdf = finish_pdf(canvas, {.title = "Inlays"});
  REQUIRE(pdf);
  const std::string list = read_back(*pdf, "pdfimages -list %");
  if (contains(list, "not found")) {
    MESSAGE("skipped: pdfimages is not here");
    return;
  }
  CHECK(times(list, "jpeg") == 2);  // not its pixels, deflated
  CHECK(times(list, "smask") == 1);
  CHECK(contains(read_back(*pdf, "qpdf --check %"), "No syntax or stream encoding errors"));
}

TEST_CASE("readers paint an inlay where it lies and see the paper through it") {
  Canvas canvas = Canvas::pages({40, 40}, 0);
  canvas.cutout(disc(200), {10, 10, 20, 20});
  const auto pdf = finish_pdf(canvas, {.title = "A disc"});
  REQUIRE(pdf);
  const std::string ppm = read_back(*pdf, "pdftoppm -r 127 %");  // 5 pixels a mm
  if (ppm.substr(0, 2) != "P6") {
    MESSAGE("skipped: pdftoppm is not here");
    return;
  }
  const int width = std::atoi(ppm.c_str() + 3);
  const std::size_t pixels = ppm.find("255\n") + 4;
  const auto red = [&](int x_mm, int y_mm) {
    const std::size_t at = pixels + static_cast<std::size_t>((y_mm * 5 * width + x_mm * 5) * 3);
    return std::pair<int, int>(static_cast<unsigned char>(ppm[at]),
                               static_cast<unsigned char>(ppm[at + 1]));
  };
  CHECK(red(20, 20).first > 180);
  CHECK(red(20, 20).second < 20);
  for (const auto& [x, y] : {std::pair(11, 11), std::pair(29, 29), std::pair(5, 20)}) {
    CHECK(red(x, y).first == 255);
    CHECK(red(x, y).second == 255);
  }
}

TEST_CASE("a JPEG goes in as it is, but for what its maker wrote beside the pixels") {
  const std::string pixels = encode_jpeg(filled(40, 30), 80);
  const std::string bytes =
      pixels.substr(0, 2) + segment('\xE1', std::string("Exif\0\0", 6) + "GPS of the vault") +
      segment('\xFE', "owner: a private collector") + pixels.substr(2) + "a film after the end";
  const auto ready = ready_photograph(bytes, {40, 30});
  REQUIRE(ready);
  CHECK(ready->inlay.jpeg == pixels);
  CHECK(ready->inlay.mask.empty());
  CHECK(ready->stored.width == 40);
  // Larger than its place: made smaller, and so packed anew.
  const auto smaller = ready_photograph(bytes, {20, 15});
  REQUIRE(smaller);
  CHECK(smaller->inlay.width == 20);
  CHECK_FALSE(contains(smaller->inlay.jpeg, "GPS"));
}

TEST_CASE("a JPEG cut short is refused, not printed half") {
  const std::string pixels = encode_jpeg(disc(200), 80);
  CHECK_FALSE(ready_photograph(pixels.substr(0, 200), {200, 200}));
  CHECK_FALSE(plain_jpeg(pixels.substr(0, 12)));
}

TEST_CASE("a large JPEG comes smaller from its decoder, and no smaller than is asked") {
  const std::string bytes = encode_jpeg(filled(400, 240), 80);
  const auto part = decode_picture(bytes, {150, 90});
  REQUIRE(part);
  CHECK(part->width == 150);  // three eighths
  CHECK(part->height == 90);
  CHECK(part->at(70, 40)[1] == 255);
  CHECK(decode_picture(bytes, {151, 90})->width == 200);
  CHECK(decode_picture(bytes)->width == 400);
}

TEST_CASE("a shadow weighs what its shape weighs and is gone at three blurs") {
  const Shadow shadow{0, 0, 1.7, {0, 0, 0, 1}};
  const ReadyShadow ready = shadow_of(filled(200, 200), {15, 15, 10, 10}, {shadow}, 6);
  const auto seen = opacities(ready.inlay);
  double sum = 0;
  for (const std::uint8_t value : seen) {
    sum += value / 255.0;
  }
  CHECK(sum / 36.0 == doctest::Approx(100).epsilon(0.03));  // mm^2
  const auto at = [&](double x, double y) {
    const auto column = static_cast<std::size_t>((x - ready.box.x) * 6);
    const auto row = static_cast<std::size_t>((y - ready.box.y) * 6);
    return seen[row * static_cast<std::size_t>(ready.inlay.width) + column] / 255.0;
  };
  CHECK(at(20, 10) == 0);  // 5 mm above the shape
  // A normal blur leaves one half at a straight edge.
  CHECK(at(20, 15) == doctest::Approx(0.5).epsilon(0.06));
}

TEST_CASE("a shadow lies as far off as it is said to") {
  const Shadow shadow{1, 1.5, 0.4, {0, 0, 0, 1}};
  const ReadyShadow ready = shadow_of(filled(300, 300), {15, 15, 10, 10}, {shadow}, 5);
  const auto seen = opacities(ready.inlay);
  double sum = 0;
  double x_sum = 0;
  double y_sum = 0;
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const auto width = static_cast<std::size_t>(ready.inlay.width);
    sum += seen[i];
    x_sum += seen[i] * (static_cast<double>(i % width) + 0.5);
    y_sum += seen[i] * (static_cast<double>(i / width) + 0.5);
  }
  CHECK(ready.box.x + x_sum / sum / 5 == doctest::Approx(21).epsilon(0.001));
  CHECK(ready.box.y + y_sum / sum / 5 == doctest::Approx(21.5).epsilon(0.001));
}
