#include "draw/inlay.h"

#include <algorithm>
#include <zlib.h>

#include "base/result.h"
#include "draw/jpeg.h"
#include "draw/jpeg_tags.h"
#include "draw/masks.h"

namespace backmark::draw {

namespace {

bool opaque(const Picture& picture) {
  for (std::size_t i = 3; i < picture.rgba.size(); i += 4) {
    if (picture.rgba[i] != 255) {
      return false;
    }
  }
  return true;
}

// A pixel more or less is not worth a second packing.
bool fits(PictureSize size, PictureSize most) {
  return size.width * 10 <= most.width * 11;
}

}  // namespace

std::string packed_mask(std::vector<std::uint8_t> opacity, int width) {
  const auto across = static_cast<std::size_t>(width);
  for (std::size_t row = 0; row < opacity.size(); row += across) {
    for (std::size_t x = across - 1; x > 0; --x) {
      opacity[row + x] = static_cast<std::uint8_t>(opacity[row + x] - opacity[row + x - 1]);
    }
  }
  return deflated(opacity);
}

std::string deflated(const std::vector<std::uint8_t>& bytes) {
  uLongf size = compressBound(static_cast<uLong>(bytes.size()));
  std::string packed(size, '\0');
  // Level 3: of a mask the rest of the levels save a tenth of nothing much, for thrice the
  // time.
  if (compress2(reinterpret_cast<Bytef*>(packed.data()), &size, bytes.data(),
                static_cast<uLong>(bytes.size()), 3) != Z_OK) {
    throw BrokenPromise("a mask could not be packed");
  }
  packed.resize(size);
  return packed;
}

Inlay inlay_of(const Picture& picture, int quality) {
  Inlay inlay{
      picture.width, picture.height, encode_opaque_jpeg(picture, quality), false, {}, {}};
  if (!opaque(picture)) {
    std::vector<std::uint8_t> opacity(picture.rgba.size() / 4);
    for (std::size_t i = 0; i < opacity.size(); ++i) {
      opacity[i] = picture.rgba[4 * i + 3];
    }
    inlay.mask = packed_mask(std::move(opacity), picture.width);
  }
  return inlay;
}

Result<ReadyPhotograph> ready_photograph(std::string_view bytes, PictureSize most) {
  const auto stored = picture_size(bytes);
  if (!stored) {
    return stored.problem();
  }
  auto decoded = decode_picture(bytes, most);
  if (!decoded) {
    return decoded.problem();
  }
  ReadyPhotograph ready{{}, *stored, std::move(*decoded)};
  if (fits(*stored, most)) {
    if (auto kept = plain_jpeg(bytes)) {
      ready.inlay = {stored->width, stored->height, std::move(kept->bytes), kept->grey, {}, {}};
      return ready;
    }
  }
  if (!fits({ready.picture.width, ready.picture.height}, most)) {
    ready.picture = resized(ready.picture, std::max(1, most.width), std::max(1, most.height));
  }
  ready.inlay = inlay_of(ready.picture);
  return ready;
}

}  // namespace backmark::draw
