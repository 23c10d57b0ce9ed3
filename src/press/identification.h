// The object identification sheet of a piece on loan: what lets a stranger tell it from every
// other, in the fields of the Object ID standard (ICOM; the list of fields from memory and from
// our notes on cataloguing standards).
#pragma once

#include "press/job.h"

namespace backmark::press {

// identification.pdf: a page for each piece with a loan. Photographs with a scale bar, then
// distinguishing features first, type, title, subject, materials, techniques, measurements,
// inscriptions and marks, date, maker, related objects, object number and the day of the sheet.
// Facts only: a field without an observation says "not recorded", and nothing is guessed.
// Neither values, nor places of keeping, nor owners. Found: missing views, and pieces without a
// distinguishing feature. Problems: refused (audience), not_found (no loans).
Result<Printed> print_identification(const PressJob& job);

}  // namespace backmark::press
