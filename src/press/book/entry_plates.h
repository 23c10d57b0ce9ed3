// The pictures of an entry on its page, and what they are measured by.
#pragma once

#include <string>
#include <string_view>

#include "press/book/layout.h"

namespace backmark::press::book {

inline constexpr double between_plates = 8;  // mm from one cut-out to another
// What is said under pieces that share a spread.
inline constexpr std::string_view each_faces = "all at true size; each back faces its front";
inline constexpr double clear_of_words = 6;  // mm from a cut-out to words or a chart

// The taller of front and back at true size, or the measured height of a piece without
// pictures; 0: nothing can be shown.
double height_of(const Entry& entry);
// A picture with its scale known, whole, with its middle at `centre`; else nothing.
void add_view(Page& page,
              const model::Photograph* photograph,
              draw::Point centre,
              double ratio,
              const Entry& entry,
              std::string_view view);

// Four corners that would hold a picture that there is not.
void add_corners(Layout& book, Page& page, draw::Point middle, draw::Size size);

// Front and back side by side at the largest ratio that the room allows, in its middle; a piece
// without pictures as four corners. Returns the ratio.
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
// The mark at the left of the room's foot, four times as large if the room allows, else three;
// nothing if it allows neither.
void add_mark_at_foot(Layout& book, Page& page, const Entry& entry, draw::Box room);

}  // namespace backmark::press::book
