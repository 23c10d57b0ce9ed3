// How well paragraphs were set, as numbers.
#pragma once

#include <string>
#include <vector>

#include "draw/paragraph.h"

namespace backmark::draw {

// Whether the paragraph ends, below other lines, in one under 10 mm or 7 characters.
bool is_short_last(const Paragraph& paragraph);

struct Quality {
  int lines = 0;  // justified ones: all but the last of each paragraph
  int paragraphs = 0;
  int loose = 0;       // spaces over 1.5 of natural
  int very_loose = 0;  // over 2
  int overfull = 0;
  int hyphens = 0;
  int hyphens_in_a_row = 0;              // lines that end with a hyphen right after another
  int short_last = 0;                    // as is_short_last
  std::vector<std::string> scraps = {};  // the last two lines of such, a few of them
  double loosest = 0;                    // share of natural space
  double mean_space = 0;

  void add(const Paragraph& justified);
  // Only the last line and what sticks out count.
  void add_ragged(const Paragraph& paragraph);
  // Two books' worth: sums of counts, the mean weighed by lines.
  void add(const Quality& other);
  friend bool operator==(const Quality&, const Quality&) = default;

 private:
  double sum_ = 0;
};

}  // namespace backmark::draw
