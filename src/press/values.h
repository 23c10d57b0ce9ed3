// The values schedule: opinions of worth for insurance, never an appraisal, never on a public
// paper.
#pragma once

#include <map>
#include <string>

#include "press/job.h"

namespace backmark::press {

// Sums by currency, in minor units.
using Totals = std::map<std::string, std::int64_t>;

// "1,240.00"; currencies without minor units (ISO 4217: JPY, KRW, ISK, CLP, VND) have none.
std::string money_text(const Money& money);
// "EUR 1,240.00, USD 15.00"; "nothing" if empty.
std::string totals_text(const Totals& totals);

// The opinion that counts, the last by day, of every piece that has one, by its id.
std::map<std::int32_t, const model::ValueOpinion*> last_values(const model::Show& show);

// values.pdf and values.csv: of several opinions on a piece the last; by lender, then the sums
// by case; every total is reckoned by both routes, and a difference is a broken promise. Pieces
// without an opinion are listed and found. Problems: refused, for an audience that may not see
// values, or an empty show.
Result<Printed> print_values(const PressJob& job);

}  // namespace backmark::press
