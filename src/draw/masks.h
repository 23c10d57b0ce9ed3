// Packing of masks; for the bodies of this room.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace backmark::draw {

// As a zlib stream (RFC 1950).
std::string deflated(const std::vector<std::uint8_t>& bytes);

// Opacities, row by row, as differences along each row (TIFF predictor 2), deflated.
std::string packed_mask(std::vector<std::uint8_t> opacity, int width);

}  // namespace backmark::draw
