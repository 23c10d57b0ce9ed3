// What must be in order before a book goes to the printer, as far as the record alone shows it:
// the rest is found while the pages are set.
#pragma once

#include "draw/quality.h"
#include "press/job.h"
#include "words/numbering.h"

namespace backmark::press {

// Of the pieces of the book: leave to print refused, asked for and not yet given, or never
// asked for, by the latest answer of each piece; front or back not photographed; pictures
// without a true scale. One finding a kind, with the numbers of the pieces.
Problems preflight(const model::Show& show, const words::Numbering& numbering);

// How the lines are set, where it falls short of what is asked of a book: lines that stick out;
// one in a hundred or more with spaces over twice the natural; last lines of one short word.
Problems judge_lines(const draw::Quality& quality);

}  // namespace backmark::press
