// The words of an entry, set once for every layout of entries.
#pragma once

#include "press/book/layout.h"

namespace backmark::press::book {

// Number, title, maker, place and year, then the facts, downward from grid line `from`: in the
// side column, or where there is none in two halves of the type area side by side. Returns the
// y after the last line.
double add_entry_head(Layout& book, Page& page, const Entry& entry, int from);

// The two parts of the head where there is no side column: number and names, and the facts.
// They return the y after their last lines; the heights tell how far they would reach.
double add_entry_names(Layout& book, Page& page, const Entry& entry, draw::Point corner);
double add_entry_facts(Layout& book, Page& page, const Entry& entry, draw::Point at);
double names_height(Layout& book, const Entry& entry);
double facts_height(Layout& book, const Entry& entry);

// A fact as it is set in an entry.
struct HeadFact {
  words::FactKind kind;
  draw::Style style;
  double leading;       // mm
  double after;         // mm of white under it
  bool always = false;  // the white stands even where the fact is missing
};
// The facts that the entry has, downward; returns the y after the last. The height tells how
// far they would reach.
double add_facts(Layout& book,
                 Page& page,
                 const Entry& entry,
                 const std::vector<HeadFact>& facts,
                 draw::Point at,
                 double width);
double facts_height(Layout& book,
                    const Entry& entry,
                    const std::vector<HeadFact>& facts,
                    double width);

// A fact's words: legends of marks in small capitals, "Compare" in italics.
draw::RichText fact_words(const Layout& book,
                          const Entry& entry,
                          words::FactKind kind,
                          const draw::Style& style);
// Facts of an entry in caption type, one after another in one paragraph with `between` between
// them; those that it lacks are passed over.
draw::RichText run_in(const Layout& book,
                      const Entry& entry,
                      const std::vector<words::FactKind>& kinds,
                      std::string_view between);
// The caption type in which a fact of this kind is set.
draw::Style small_style(const Grid& grid, words::FactKind kind);

// The paragraphs of prose, ragged, for measures too narrow to be justified.
std::vector<draw::Paragraph> ragged_prose(Layout& book, const Entry& entry, double width);

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
// Lines of the reasons in caption type; 0: there are none.
int why_lines(Layout& book, const Entry& entry, double width);
// Why this maker and this year, under its head, after text whose last line is `last`.
void add_why(Layout& book, Page& page, const Entry& entry, double left, int last, double width);

// The fade band of the piece's year, `width` wide, with its axis at y; nothing for a piece that
// is not dated. Opacity 0.05 + 0.80 p/max; strokes at the 10 and 90 points, a lozenge at the
// middle. A year that is written on the piece and believed is a diamond alone.
void add_year_band(
    Layout& book, Page& page, const Entry& entry, draw::Point axis, double width);

}  // namespace backmark::press::book
