// A ragged paragraph in caption type some of whose words lead to places of the book.
#pragma once

#include <string>
#include <vector>

#include "press/book/layout.h"
#include "press/makers.h"

namespace backmark::press::book {

class Linked {
 public:
  explicit Linked(const Grid& grid) : grid_(&grid) {}

  void add(const std::string& text);
  void add(const std::string& text, const draw::Style& style, const std::string& place = {});
  // "52, 55–57, 60": runs joined, each end a link to its entry; strong ones in copper.
  void numbers(const Places& places, bool strong);

  draw::Paragraph set(Layout& book, double width) const;
  // Puts what set() gave on the page, with its links; returns the y after the last line.
  double place(Layout& book, Page& page, const draw::Paragraph& lines, draw::Point at) const;

 private:
  const Grid* grid_;
  std::vector<draw::Stretch> words_;
  std::vector<std::string> places_;  // of the tags
};

}  // namespace backmark::press::book
