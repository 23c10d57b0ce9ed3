// Two pieces beside each other, once or twice, on a spread: fronts with their names and prose
// on the verso, each back with its facts on the recto where it meets its front when the book is
// shut. Words under plates of one row begin on one line, and so do their prose, their reasons
// and their bands.
#pragma once

#include <cstddef>

#include "press/book/layout.h"

namespace backmark::press::book {

inline constexpr std::size_t most_in_cells = 4;

// The left edge of the left or right half of the type area: on a recto the pieces stand in
// mirrored order.
double half_left(const Grid& grid, Side side, std::size_t at);

// Whether these pieces, one to four, fit such a spread: every plate at true size in its half,
// all prose and facts under it. Of two, the reasons may be left out for want of room.
bool cells_fit(Layout& book, const Entry* first, std::size_t count);

// Promise: they fit.
void lay_cells(Layout& book, const Entry* first, std::size_t count);

}  // namespace backmark::press::book
