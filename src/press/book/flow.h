// Text that runs over pages: lines gathered from blocks, then pages broken so that no paragraph
// leaves a single line behind, no head stands at a foot, and notes stand on the page of their
// marks.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "press/book/figure.h"
#include "press/book/layout.h"

namespace backmark::press::book {

// A line of running text with what binds it to its neighbours.
struct FlowLine {
  draw::ParagraphLine line;
  double indent = 0;   // from the left of the text measure
  int before = 0;      // white lines before it, dropped at the head of a page
  bool first = false;  // of its paragraph
  bool last = false;
  bool head = false;             // a heading: keeps two lines after it
  std::vector<int> notes;        // whose marks stand in it
  const Words* words = nullptr;  // of its block; its line's tags count them
  std::string where;
  int height = 1;  // grid lines; more for a figure, which is a line by itself
  const Figure* figure = nullptr;
  bool page_head = false;  // a figure that moved: stands at the head of a page only
  std::vector<const Figure*> beside = {};  // called here, for the side column
};

// The lines of a chapter's blocks. Paragraphs after a head, and the first, stand flush. A
// figure of the side column is called at the first line that follows it; `figures` are those of
// the chapter by their numbers, lent to the lines.
std::vector<FlowLine> flow_lines(Layout& book,
                                 const Prose& prose,
                                 const std::map<int, Figure>& figures);

// The chapter's figures by their numbers.
std::map<int, Figure> figures_of(Layout& book, const Prose& prose);

// How many grid lines the notes take from the foot of a page; 0 for none.
struct NoteRoom {
  std::vector<int> lines;  // of each note of the chapter, in small lines
  int taken(const Grid& grid, const std::vector<int>& notes) const;
};

// Index of the first line of each page, the first 0; the first page holds `first_room` lines,
// the others grid.lines. The sum of squares of white lines left at the foot of pages is least,
// the last page is free. Where no choice keeps the rules, the page is as full as it goes. A
// figure that would leave a hole moves to the head of the next page, text that follows it goes
// before it.
std::vector<std::size_t> break_pages(const Grid& grid,
                                     std::vector<FlowLine>& lines,
                                     const NoteRoom& notes,
                                     int first_room);

}  // namespace backmark::press::book
