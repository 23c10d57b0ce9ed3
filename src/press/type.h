// Short ragged paragraphs for sheets and labels.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "draw/fonts.h"

namespace backmark::press {

inline constexpr double mm_per_pt = 25.4 / 72.0;

// Lines no wider than `width` mm (a word that is wider sticks out), ragged right, no hyphens;
// paragraphs end at line ends of the text. No-break spaces hold.
std::vector<std::string> wrapped(const draw::Fonts& fonts,
                                 std::string_view text,
                                 const draw::Style& style,
                                 double width);

// As wrapped(), with lines as even as they can be without needing more of them: for titles.
std::vector<std::string> balanced(const draw::Fonts& fonts,
                                  std::string_view text,
                                  const draw::Style& style,
                                  double width);

// Shows lines from a first baseline down; gives the baseline after the last one.
double show_lines(draw::Canvas& canvas,
                  const draw::Fonts& fonts,
                  draw::Point first_baseline,
                  const std::vector<std::string>& lines,
                  const draw::Style& style,
                  double leading_mm);

// The text cut at a letter so that it fits, with an ellipsis; the whole of it if it does.
std::string fitted(const draw::Fonts& fonts,
                   std::string_view text,
                   const draw::Style& style,
                   double width);

// Words, as label rules count them: stretches between spaces.
int word_count(std::string_view text);

// "1 piece", "5 pieces".
std::string counted(std::size_t count, std::string_view noun);

// Markdown marks for stress, links and heads taken away; paragraphs stay apart.
std::string without_marks(std::string_view markdown);

}  // namespace backmark::press
