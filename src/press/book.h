// The book: everything picked for it, with the essays, as one PDF for the printer.
#pragma once

#include "press/job.h"

namespace backmark::press {

// book.pdf. Settings "book.trim" (A: 240 x 300 mm, B: 170 x 240), "book.bleed" (mm, default 3),
// "book.sheet" (pages of a signature, default 16). Problem: refused, if nothing is picked for
// the book. What gave way is a finding; the book still comes out.
Result<Printed> print_book(const PressJob& job);

}  // namespace backmark::press
