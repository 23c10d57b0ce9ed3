// Which entries get a spread, a page, half a page or a place among six.
#pragma once

#include <vector>

#include "press/book/layout.h"

namespace backmark::press::book {

enum class Form { spread, page, six };

// Entries that stand together: one on a spread, one or two on a page, up to six on a spread of
// fronts and backs.
struct Slot {
  Form form = Form::page;
  std::size_t first = 0;
  std::size_t count = 1;
};

// A spread and a group of six start on a verso, as does a part's first page after the opener:
// where a run of single pages between them is odd, two pieces that shared a page get one each,
// or its first piece gets a spread. A piece without a picture never gets more than a page.
std::vector<Slot> slots_of(Layout& book, const std::vector<Entry>& entries);

// Grid lines of a piece with all that belongs to it, on a page or half of one.
int block_lines(Layout& book, const Entry& entry);
inline constexpr int lines_between = 2;

// The taller of front and back at true size; 0: there is no picture.
double height_of(const Entry& entry);

// The opener of a section.
void lay_opener(Layout& book, const EntryPart& part);

}  // namespace backmark::press::book
