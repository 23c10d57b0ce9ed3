// Which entries get a spread, which share one.
#pragma once

#include <vector>

#include "press/book/layout.h"

namespace backmark::press::book {

enum class Form { spread, cells, six };

// Entries that stand on one spread: one; two to four in halves of the pages; or up to six
// fronts and backs.
struct Slot {
  Form form = Form::spread;
  std::size_t first = 0;
  std::size_t count = 1;
};

// As few spreads as the entries in their order allow; of those, the pieces with most prose
// stand alone. A lead piece, one with long prose and one that half a page cannot show at true
// size have a spread each; a piece without a picture shares one wherever its words fit.
std::vector<Slot> slots_of(Layout& book, const std::vector<Entry>& entries);

// Gives further pieces a spread, most prose first, until no more than `blank` pages more are
// filled.
void raise_pieces(Layout& book, int blank);

// The last line of a page above its bar and scale.
int last_line(const Grid& grid);

// The opener of a section; the back of its piece on the verso before it, if that is free.
void lay_opener(Layout& book, const EntryPart& part);
// One piece on a verso and the recto beside it.
void lay_spread(Layout& book, const Entry& entry);
// Up to six: fronts on the verso, each back facing its front.
void lay_six(Layout& book, const Entry* first, std::size_t count);

}  // namespace backmark::press::book
