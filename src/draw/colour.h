// Colours (sRGB) and what can be poured into a shape.
#pragma once

#include <cstdint>
#include <variant>
#include <vector>

#include "draw/geometry.h"

namespace backmark::draw {

// sRGB components and opacity, each 0 to 1.
struct Colour {
  double red = 0;
  double green = 0;
  double blue = 0;
  double alpha = 1;

  // From 0xRRGGBB.
  static constexpr Colour hex(std::uint32_t rgb, double alpha = 1) {
    return {static_cast<double>((rgb >> 16) & 255U) / 255.0,
            static_cast<double>((rgb >> 8) & 255U) / 255.0,
            static_cast<double>(rgb & 255U) / 255.0, alpha};
  }
  constexpr Colour with_alpha(double opacity) const { return {red, green, blue, opacity}; }

  friend bool operator==(Colour, Colour) = default;
};

// The palette of everything printed. Contrast on white by the WCAG 2.2 formula: ink 17.2,
// copper 7.8, grey 6.0.
inline constexpr Colour ink = Colour::hex(0x1C1B1A);
inline constexpr Colour copper = Colour::hex(0x8B391D);
inline constexpr Colour grey = Colour::hex(0x666360);
inline constexpr Colour rule_grey = Colour::hex(0xCCC9C4);
inline constexpr Colour tint = Colour::hex(0xF6F4F0);
inline constexpr Colour label_stock = Colour::hex(0xF9F7F4);
inline constexpr Colour white = Colour::hex(0xFFFFFF);

// Contrast ratio of two opaque colours, 1 to 21: (L1 + 0.05) / (L2 + 0.05) with relative
// luminance L (WCAG 2.2, definitions of contrast ratio and relative luminance).
double contrast(Colour a, Colour b);

struct Stop {
  double offset = 0;  // 0 to 1 along the gradient
  Colour colour;
};

struct LinearGradient {
  Point from;
  Point to;
  std::vector<Stop> stops;
};

// Between two circles; the usual case is one centre and from_radius 0.
struct RadialGradient {
  Point from;
  double from_radius = 0;
  Point to;
  double to_radius = 0;
  std::vector<Stop> stops;
};

using Paint = std::variant<Colour, LinearGradient, RadialGradient>;

}  // namespace backmark::draw
