// The packing list: what travels together, part by part, out and in again.
#pragma once

#include "press/job.h"

namespace backmark::press {

// packing.pdf and packing.csv. A consignment is what one lender hands over on one day (the
// first of the loan); pieces of the show without a loan are one more, from the house's own
// store. Every list begins on a page of its own, with room for vehicle, crate and seal, and
// every part has a box for out and for in. Trays stand on it only for an audience that may see
// them, and then order it; values and addresses of lenders never. Where to bring it is the
// setting "delivery", else "house". Found: pieces without a recorded part or mass, loans
// without a first day. Problems: refused (audience), not_found (nothing to pack).
Result<Printed> print_packing(const PressJob& job);

}  // namespace backmark::press
