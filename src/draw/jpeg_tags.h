// What a JPEG says of itself beside its pixels: which way up it was held, what its colours
// mean. For the bodies of this room.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "draw/picture.h"

namespace backmark::draw {

// Orientation of the EXIF head, 1 to 8 (CIPA DC-008, tag 0x0112); 1 where there is none or it
// cannot be read.
int jpeg_orientation(std::string_view bytes);

// The colour profile, put together from its parts (ICC.1:2010, annex B.4); empty if there is
// none.
std::string jpeg_profile(std::string_view bytes);

// A JPEG that says its pixels and nothing else: what its maker wrote beside them (place, owner,
// camera, remarks) is gone.
struct PlainJpeg {
  std::string bytes;
  bool grey = false;
};
// Nothing where the pixels alone would not do: it must be turned, has a profile, or is neither
// of grey nor of three channels of 8 bits.
std::optional<PlainJpeg> plain_jpeg(std::string_view bytes);

// Upright: turned and mirrored as the orientation says.
Picture upright(Picture picture, int orientation);

// Colours of `profile` to sRGB, in place. A profile that cannot be used is left out of account.
void to_srgb(Picture& picture, const std::string& profile);

}  // namespace backmark::draw
