// The words of an entry, set once for every layout of entries.
#pragma once

#include "press/book/layout.h"

namespace backmark::press::book {

// Number, title, maker, place and year, then the facts, downward from grid line `from`: in the
// side column, or where there is none in two halves of the type area side by side. Returns the
// y after the last line.
double add_entry_head(Layout& book, Page& page, const Entry& entry, int from);

// A fact as it is set: legends of marks in small capitals, "Compare" in italics.
draw::RichText fact_words(const Layout& book,
                          const Entry& entry,
                          words::FactKind kind,
                          const draw::Style& style);

// The paragraphs of prose in lines of the text measure; they count for the quality of the book.
draw::Paragraph prose_lines(Layout& book, const Entry& entry);

// What the entry takes, measured once for all passes.
const EntrySize& entry_size(Layout& book, const Entry& entry);

// Lines of text on the grid from baseline `first` on.
void add_text_lines(
    Layout& book, Page& page, const draw::Paragraph& lines, double left, int first);

// The line of the year band's axis, after text whose last line is `last` and reasons of so many
// lines; 0: none are printed.
int band_after(const Layout& book, int last, int why_lines);
// Why this maker and this year, under its head, after text whose last line is `last`.
void add_why(Layout& book, Page& page, const Entry& entry, int last);

// The fade band of the piece's year, `width` wide, with its axis at y; nothing for a piece that
// is not dated. Opacity 0.05 + 0.80 p/max; strokes at the 10 and 90 points, a lozenge at the
// middle. A year that is written on the piece and believed is a diamond alone.
void add_year_band(
    Layout& book, Page& page, const Entry& entry, draw::Point axis, double width);

}  // namespace backmark::press::book
