// Marks as pictures with their words: beside their makers, and on a plate of their own.
#pragma once

#include <vector>

#include "press/book/layout.h"
#include "press/makers.h"

namespace backmark::press::book {

// How wide a mark's picture may be and how many stand side by side.
struct MarkRoom {
  double width = 56;
  double height = 36;
  int across = 1;
};

// Beside a maker in the side column, or in a row of three under the text.
MarkRoom mark_room(const Grid& grid);

// The height of all these with their words, in mm.
double marks_height(const Layout& book, const std::vector<StruckMark>& marks, MarkRoom room);

// Downward (and rightward) from the corner `at`, each at the largest of four, three, two times
// and true size that fits; the ratio is said where it changes, with a bar of 5 mm.
void add_marks(Layout& book,
               Page& page,
               const std::vector<StruckMark>& marks,
               draw::Point at,
               MarkRoom room);

// Three across from `top` on, on as many pages as it takes.
void lay_mark_plate(Layout& book, Page& page, const std::vector<StruckMark>& marks, double top);

}  // namespace backmark::press::book
