// Optimum-fit line breaking over plain numbers: the whole paragraph is weighed at once, after
// D. E. Knuth and M. F. Plass, "Breaking paragraphs into lines", Software: Practice and
// Experience 11 (1981). The figures are those of Backmark's design.
#pragma once

#include <cstddef>
#include <vector>

namespace backmark::draw {

enum class BreakKind { space, hyphen_own, hyphen_existing, end };

// A place where a line may end. The text runs along one axis in mm at natural width:
// the line from place i to place j is  at(j) + end_extra(j) - next_at(i) - start_less(i)  wide.
struct BreakPlace {
  BreakKind kind = BreakKind::space;
  double at = 0;           // where a line ending here stops
  double end_extra = 0;    // width of an added hyphen, less what hangs in the margin
  double next_at = 0;      // where a line after it starts
  double start_less = 0;   // what hangs in the left margin
  double spaces_at = 0;    // total natural width of stretching spaces before `at`
  double spaces_next = 0;  // the same before `next_at`
  int letters_at = 0;      // characters before `at`
};

struct Measure {
  double width = 0;         // mm
  double em = 4.233;        // mm, of the text
  double first_indent = 0;  // mm
  double tightest = -1;     // lines with a lower ratio are forbidden
};

// Where a paragraph has a line with spaces over 1.5 of the natural, or none that keeps the
// rules, it is tried once more with spaces that lose up to this share: the third that Knuth and
// Plass give them from the start.
inline constexpr double tightest_space = 1.0 / 3;

// One line: natural width, the sum of its spaces, and the ratio r, in which stretch is 0.50 and
// shrink 0.24 of a space. r < -1 is too tight.
struct LineFit {
  double natural = 0;
  double spaces = 0;
  double ratio = 0;
};

// `from` is the index of the place where the line starts, or -1 for the first line.
LineFit fit_line(const std::vector<BreakPlace>& places,
                 int from,
                 int to,
                 const Measure& measure);

// Demerits of a whole choice of breaks (indices, the last one is the end place);
// +infinity if it holds a forbidden line. The values:
// badness b = 100 |r|^3 (+ 3000 if r > 3.2); demerits (10 + b)^2 + P; P: own hyphen 6300,
// existing hyphen 2100, second hyphen in a row + 9000, third forbidden, hyphen before the last
// line + 6000, neighbours two fit classes apart + 4000. Last line: b + 900 under 20 characters,
// + 40 within 1.4 em of full, forbidden under 10 mm or 7 characters unless it is the only one.
double demerits(const std::vector<BreakPlace>& places,
                const std::vector<int>& breaks,
                const Measure& measure);

// The breaks with the fewest demerits. If every choice is forbidden (a word wider than the
// measure), the lines that stick out stick out least.
std::vector<int> break_justified(const std::vector<BreakPlace>& places, const Measure& measure);

// The first breaks that fit, each line as full as it goes: the naive twin, for comparison.
std::vector<int> break_first_fit(const std::vector<BreakPlace>& places, const Measure& measure);

// Ragged right: the least sum of squared slack, the last line free, no added hyphens; a last
// line under 10 mm or 7 characters below others counts as one that is empty.
std::vector<int> break_ragged(const std::vector<BreakPlace>& places, const Measure& measure);

}  // namespace backmark::draw
