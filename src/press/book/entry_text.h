// The words of an entry, set once for every layout of entries.
#pragma once

#include "press/book/layout.h"

namespace backmark::press::book {

// Number, title, maker, place and year, then the facts, downward from `at`, the head of the
// type area or of a part of it; returns the y after the last line.
double add_entry_head(
    Layout& book, Page& page, const Entry& entry, draw::Point at, double width);

// The paragraphs of prose in lines of the text measure; they count for the quality of the book.
draw::Paragraph prose_lines(Layout& book, const Entry& entry);

// The height of the head, in mm, in the measure that it has on its page.
double head_height(Layout& book, const Entry& entry);

// How many lines the prose takes.
int prose_height(Layout& book, const Entry& entry);

// Lines of text on the grid from baseline `first` on.
void add_text_lines(
    Layout& book, Page& page, const draw::Paragraph& lines, double left, int first);

// The fade band of the piece's year, `width` wide, with its axis at y; nothing for a piece that
// is not dated. Opacity 0.05 + 0.80 p/max; strokes at the 10 and 90 points, a lozenge at the
// middle. A year that is written on the piece and believed is a diamond alone.
void add_year_band(
    Layout& book, Page& page, const Entry& entry, draw::Point axis, double width);

}  // namespace backmark::press::book
