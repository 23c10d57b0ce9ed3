// The loan schedule: what each lender lends, when, and on which conditions.
#pragma once

#include "press/job.h"

namespace backmark::press {

// loans.pdf and loans.csv, by lender: pieces with the days of the loan, the day they must be
// back, conditions, whether the paper is signed, and values where the audience may see them;
// contacts on a page of their own, for whom they are meant. Who insures is the setting
// "insurance". Found: loans that are not signed, that end before the show closes or begin after
// it opens (settings "opens", "closes"), that are to be back before they end, and pieces of a
// lender without a loan. Problems: refused (audience), not_found (no loans).
Result<Printed> print_loans(const PressJob& job);

}  // namespace backmark::press
