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
// or the piece with most to say gets a spread. A piece without a picture never gets more than a
// page; one that a page cannot show at true size gets a spread.
std::vector<Slot> slots_of(Layout& book, const std::vector<Entry>& entries);

// Gives further pieces a spread, most prose first: where a part would end on a blank page, and
// until no more than `blank` pages more are filled.
void raise_pieces(Layout& book, int blank);

// A piece in the upper or lower part of a page, in grid lines.
struct BlockFit {
  int text = 0;           // the first baseline of its words
  int why = 0;            // lines of the reasons that there is room for: all or none
  bool true_size = true;  // there is room for its pictures
};
// `from`, `until`: the lines that the block may take; `plate_until`: where its plate's field
// ends if its words leave so much.
BlockFit fit_block(Layout& book, const Entry& entry, int from, int until, int plate_until);

// The last line of the field of a plate that has a page for itself: the words under the plates
// of two facing pages begin level.
int plate_field(const Grid& grid);

// Grid lines of a piece with all that belongs to it, with so many lines of reasons.
int block_lines(Layout& book, const Entry& entry, int why_lines);
inline constexpr int lines_between = 2;
// The last line of a page above its bar and scale.
int last_line(const Grid& grid);

// The opener of a section.
void lay_opener(Layout& book, const EntryPart& part);
// One piece on a verso and the recto beside it.
void lay_spread(Layout& book, const Entry& entry);
// One piece on a page, or two under each other.
void lay_page(Layout& book, const Entry* first, std::size_t count);
// Up to six: fronts on the verso, each back facing its front.
void lay_six(Layout& book, const Entry* first, std::size_t count);

}  // namespace backmark::press::book
