// Paragraphs that run down columns and on over pages: the lists at the back of the book.
#pragma once

#include <string>
#include <vector>

#include "draw/paragraph.h"
#include "press/book/layout.h"

namespace backmark::press::book {

// A chapter of the back matter: title on baseline 3 in column 1, its note in caption type from
// column 3 on. Returns the page, whose text may start on baseline 8.
Page& open_back_matter(Layout& book, Chapter chapter, const std::string& note);
inline constexpr double back_matter_first = 8;  // baseline of the first line under the title

class ListFlow {
 public:
  // From baseline 8 of `page` on, in 2 or 3 columns (2 in a book without side column).
  ListFlow(Layout& book, Page& page, int columns);

  // Ragged, in caption leading; lines after the first stand `hang` mm in. A paragraph of up to
  // 3 lines is not parted; of longer ones two lines stay together. `goes_on` is printed, in
  // italics, over what stands in the next column (none if empty). Links: tag i leads to
  // places[i].
  void paragraph(const std::vector<draw::Stretch>& words,
                 double hang,
                 const std::vector<std::string>& places = {},
                 const std::string& goes_on = {});
  // Nothing at the head of a column.
  void space(double mm);
  // The next column, unless `lines` more lines fit.
  void keep(int lines);

  Page& page() { return *page_; }
  double width() const { return width_; }
  // Left edge and baseline of what comes next.
  draw::Point next() const { return {x(), y_}; }

 private:
  double x() const;
  double last() const;
  void next_column();

  Layout& book_;
  Page* page_;
  int columns_;
  int column_ = 0;
  double width_;
  double y_;
  double first_;  // baseline of the head of each column on this page
};

}  // namespace backmark::press::book
