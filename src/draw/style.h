// How a piece of text is set.
#pragma once

#include <string>
#include <vector>

#include "draw/colour.h"

namespace backmark::draw {

enum class Face {
  text,              // EB Garamond 12
  text_italic,       // EB Garamond 12 Italic
  sans,              // Inter
  sans_medium,       // Inter Medium
  sans_semibold,     // Inter SemiBold
  display_medium,    // Inter Display Medium
  display_semibold,  // Inter Display SemiBold
  wide,              // Gentium Plus: only for letters that the others lack
  wide_italic,       // Gentium Plus Italic
};

enum class Figures { lining, old_style };

struct Style {
  Face face = Face::text;
  double size_pt = 9.2;
  Colour colour = ink;
  Figures figures = Figures::lining;
  bool tabular = false;     // figures of one width, for columns only
  bool small_caps = false;  // letters of either case
  double tracking = 0;      // thousandths of an em after each glyph
  double raise = 0;         // em above the baseline

  Style with(Face other) const {
    Style style = *this;
    style.face = other;
    return style;
  }
  Style with(Colour other) const {
    Style style = *this;
    style.colour = other;
    return style;
  }
  Style sized(double pt) const {
    Style style = *this;
    style.size_pt = pt;
    return style;
  }

  friend bool operator==(const Style&, const Style&) = default;
};

// Text of one style; a rich text is a list of them.
struct Run {
  std::string text;
  Style style;

  friend bool operator==(const Run&, const Run&) = default;
};

using RichText = std::vector<Run>;

std::string plain_text(const RichText& text);

}  // namespace backmark::draw
