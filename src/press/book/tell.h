// The book for those who do not see its pages: headings, paragraphs that go on over pages, and
// pictures in words, in reading order.
#pragma once

#include <functional>
#include <map>

#include "draw/canvas.h"
#include "press/book/page.h"

namespace backmark::press::book {

class Teller {
 public:
  explicit Teller(draw::Canvas& canvas) : canvas_(canvas) {}

  // Call first for every page: one with a line in the outline begins a section.
  void begin(const Page& page);
  // Draws a line as the next stretch of its paragraph, or as what its role says.
  void line(const TextLine& line, const std::function<void()>& draw);
  void picture(const std::string& alternative, const std::function<void()>& draw);

 private:
  draw::Canvas& canvas_;
  draw::ElementNumber section_ = 0;
  std::map<int, draw::ElementNumber> paragraphs_;
};

}  // namespace backmark::press::book
