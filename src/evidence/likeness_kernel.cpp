// The two inner loops of the engine, apart because they are compiled for speed (House.cmake).
#include "evidence/likeness_kernel.h"

#include <bit>
#include <cmath>

#include "evidence/likeness.h"

namespace backmark::evidence {

namespace {

// exp(-s) for s >= 0 by 2^whole * 2^part, |part| <= 1/2, with the series of exp to the sixth
// power: relative error below 2e-7 before rounding. Plain arithmetic, so the same on every
// machine and open to the compiler's vectors.
inline float exp_of_minus(float s) {
  const float x = std::min(s, 80.0F) * -1.44269504F;
  const auto whole = static_cast<std::int32_t>(x - 0.5F);
  const float y = (x - static_cast<float>(whole)) * 0.69314718F;
  float series = 1.0F / 720;
  series = series * y + 1.0F / 120;
  series = series * y + 1.0F / 24;
  series = series * y + 1.0F / 6;
  series = series * y + 0.5F;
  series = series * y + 1.0F;
  series = series * y + 1.0F;
  return series * std::bit_cast<float>((whole + 127) << 23);
}

}  // namespace

void kernel_row(const std::uint8_t* bytes,
                std::size_t count,
                const std::vector<float>& scaled,
                float* kernel) {
  for (std::size_t i = 0; i < count; ++i) {
    kernel[i] = 0;
  }
  for (std::size_t kind = 0; kind < scaled.size(); ++kind) {
    const std::uint8_t* plane = bytes + kind * count;
    const float weight = scaled[kind];
    for (std::size_t i = 0; i < count; ++i) {
      kernel[i] += weight * static_cast<float>(plane[i]);
    }
  }
  for (std::size_t i = 0; i < count; ++i) {
    kernel[i] = exp_of_minus(kernel[i]);
  }
}

float weighted_bytes(const std::uint8_t* plane, const float* weight, std::size_t count) {
  constexpr std::size_t lanes = 16;
  float sums[lanes] = {};
  std::size_t i = 0;
  for (; i + lanes <= count; i += lanes) {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      sums[lane] += weight[i + lane] * static_cast<float>(plane[i + lane]);
    }
  }
  for (; i < count; ++i) {
    sums[0] += weight[i] * static_cast<float>(plane[i]);
  }
  float sum = 0;
  for (const float part : sums) {
    sum += part;
  }
  return sum;
}

}  // namespace backmark::evidence
