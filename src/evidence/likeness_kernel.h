// Inner loop of the likeness fit.
#pragma once

#include <cstddef>
#include <cstdint>

namespace backmark::evidence {

// sum of plane[i] * weight[i], in a fixed order of adding.
float weighted_bytes(const std::uint8_t* plane, const float* weight, std::size_t count);

}  // namespace backmark::evidence
