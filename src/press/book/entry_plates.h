// The pictures of an entry on its page, and what they are measured by.
#pragma once

#include <string>
#include <string_view>

#include "press/book/layout.h"

namespace backmark::press::book {

inline constexpr double between_plates = 8;  // mm from one cut-out to another
inline constexpr double clear_of_words = 6;  // mm from a cut-out to words or a chart

// The taller of front and back at true size, or the measured height of a piece without
// pictures; 0: nothing can be shown.
double height_of(const Entry& entry);
// Front and back of a piece at true size as a page shows them, with the white between them:
// side by side, or the back under the front if only so they are no wider than `width` and no
// higher than a page bears.
draw::Size pair_size(const Entry& entry, double width);
// How wide the plates of a page may be.
double plates_width(const Grid& grid);

// A picture with its scale known, whole, with its middle at `centre`; else nothing.
void add_view(Page& page,
              const model::Photograph* photograph,
              draw::Point centre,
              double ratio,
              const Entry& entry,
              std::string_view view);

// Front and back as pair_size has them, at the largest ratio that the room allows, in its
// middle; a piece without pictures as four corners that hold it. Returns the ratio.
double add_pair(Layout& book, Page& page, const Entry& entry, draw::Box room);

// A bar on the last baseline and, to the right, what is shown at what scale.
void add_bar_and_words(Layout& book,
                       Page& page,
                       double left,
                       double right,
                       double ratio,
                       double bar_mm,
                       const std::string& words);

// The y on which pictures of the foot row stand; their captions are on the last baseline.
double foot_floor(const Grid& grid);
// The mark on the foot of the side column, or at the right of the text where there is none:
// four times as large if there is room, else three.
void add_mark_at_foot(Layout& book, Page& page, const Entry& entry);

}  // namespace backmark::press::book
