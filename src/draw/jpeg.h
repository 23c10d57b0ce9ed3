// JPEG in and out; for the bodies of this room, which others reach by draw/picture.h.
#pragma once

#include <string>
#include <string_view>

#include "draw/picture.h"

namespace backmark::draw {

bool is_jpeg(std::string_view bytes);
Result<PictureSize> jpeg_size(std::string_view bytes);
// May come smaller, but no side under that of `least`, if that is given.
Result<Picture> decode_jpeg(std::string_view bytes, PictureSize least = {});
// As encode_jpeg, whatever the opacity.
std::string encode_opaque_jpeg(const Picture& picture, int quality);

}  // namespace backmark::draw
