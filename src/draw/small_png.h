// PNG files of at most 256 colours: a third of the size, for pictures made by drawing.
#pragma once

#include <string>

#include "draw/picture.h"

namespace backmark::draw {

// The picture in its best 256 colours with opacity, chosen by splitting the most varied group
// of colours at its mean until there are enough; fewer colours than that are kept exactly when
// they differ by at least 4 of 255. No dithering. Same picture, same bytes.
std::string encode_small_png(const Picture& picture);

}  // namespace backmark::draw
