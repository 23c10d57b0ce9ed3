// Setting a paragraph of several styles: words shaped, breaks chosen by draw/break_lines.h,
// spaces made even, punctuation hung in the margin.
#pragma once

#include <string>
#include <vector>

#include "draw/fonts.h"
#include "draw/hyphens.h"

namespace backmark::draw {

// Text of one style within a paragraph. Spaces break; U+00A0 does not, nor does it stretch.
struct Stretch {
  std::string text;
  Style style;
  bool divide = true;  // words may be hyphenated
  int tag = -1;        // comes back with the place it was set at; -1: none
};

// Where (a part of) a tagged stretch came to stand, in mm from the line's start.
struct Tagged {
  int tag = -1;
  double x = 0;
  double width = 0;
};

struct ParagraphLine {
  Line line;            // starts at x 0 of the measure; what hangs sticks out of it
  double space = 1;     // of its spaces, as a share of their natural width; 1: none or natural
  bool hyphen = false;  // ends with a hyphen of ours
  double natural = 0;   // mm, with natural spaces
  double overfull = 0;  // mm that stick out though spaces are as narrow as they may be
  std::vector<Tagged> tags;
};

using Paragraph = std::vector<ParagraphLine>;

struct Measures {
  double width = 0;         // mm
  double first_indent = 0;  // mm
};

// Both margins even, last line free. Spaces stretch by any amount that the breaker found least
// bad, and shrink by 0.24, at last by a third. Hyphens of ours stand as U+00AD in the text of
// the line.
Paragraph set_justified(const Fonts& fonts,
                        const Hyphens& hyphens,
                        const std::vector<Stretch>& text,
                        const Measures& measures);

// The first breaks that fit, for comparison only.
Paragraph set_first_fit(const Fonts& fonts,
                        const Hyphens& hyphens,
                        const std::vector<Stretch>& text,
                        const Measures& measures);

// Ragged right, no hyphens of ours, lines as even as the words allow.
Paragraph set_ragged(const Fonts& fonts,
                     const std::vector<Stretch>& text,
                     const Measures& measures);

// Spaces that must not break made U+00A0: between a number and its unit, "no." "nos" "p." "pp."
// "fig." "Lender" "about" and a number, a day and its month, initials and a name.
std::string with_held_spaces(std::string_view text);

}  // namespace backmark::draw
