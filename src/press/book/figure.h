// Figures of the essays: pictures of pieces side by side at one scale, or a photograph of
// something else; bar, caption and number under them. Small ones stand in the side column, the
// others in the text.
#pragma once

#include <string>
#include <vector>

#include "press/book/layout.h"

namespace backmark::press::book {

struct FigurePicture {
  const model::Photograph* photograph = nullptr;  // null: there is none, a frame says so
  std::string label;                              // number in the show; empty: none
  std::string alternative;
};

struct Figure {
  // Pictures that stand on one line, and the height of the tallest in mm.
  struct Row {
    std::vector<FigurePicture> pictures;
    double height = 0;
  };
  enum class Where { side, text, wide };  // wide: over text and side column
  const Block* block = nullptr;
  std::vector<Row> rows;
  double ratio = 1;     // of all its pictures; 0: they have no scale
  bool labels = false;  // numbers under pictures, where there are several pieces
  Where where = Where::text;
  double width = 0;   // mm
  double height = 0;  // mm, with bar and caption
};

// A figure is as large as it may be: true size (marks four times) if it fits, else the next
// ratio. In the side column up to half a page high. Findings: a view that was not photographed
// or may not be printed, a picture without a true scale.
Figure make_figure(Layout& book, const Block& block);

// Puts it with its upper left corner at `at`; its place is "figure 3".
void place_figure(Layout& book, Page& page, const Figure& figure, draw::Point at);

// Grid lines that it takes in the text, with the white after it.
int figure_lines(const Grid& grid, const Figure& figure);

// A piece's number leads to its entry, a page to what stands there, a figure's number to the
// figure, a short title to the works cited.
void add_links(Layout& book,
               Page& page,
               const std::vector<draw::Tagged>& tags,
               const Words& words,
               draw::Point baseline);

}  // namespace backmark::press::book
