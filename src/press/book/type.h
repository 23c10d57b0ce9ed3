// The styles of the book: EB Garamond for everything that is read, Inter for bars and locators.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "draw/paragraph.h"
#include "press/book/grid.h"
#include "press/prose.h"

namespace backmark::press::book {

inline constexpr double mm_per_point = 25.4 / 72.0;

draw::Style text_style(const Grid& grid);             // 12, old-style figures
draw::Style roman(const Grid& grid, double size_pt);  // titles, old-style figures
draw::Style italic(const Grid& grid, double size_pt);
draw::Style caption(const Grid& grid);  // 9.2, lining figures
draw::Style caption_italic(const Grid& grid);
draw::Style figures(const Grid& grid);                         // 9.2, lining, of one width
draw::Style small_caps(const Grid& grid, double size_pt = 9);  // tracked; lower-case words
draw::Style sans(const Grid& grid, double size_pt);
draw::Style sans_strong(const Grid& grid, double size_pt);

// Words in small caps are set in lower case.
std::string for_small_caps(std::string_view text);

// The stretches of words of prose in a base style; tags count the spans. `first_note` is the
// number of note 0, `page_of` gives the pages of places.
std::vector<draw::Stretch> stretches(const Words& words,
                                     const draw::Style& base,
                                     const std::function<int(const std::string&)>& page_of);

// The first words of a chapter in small caps: three to six, to the first break of sense.
void open_with_small_caps(std::vector<draw::Stretch>& text);

}  // namespace backmark::press::book
