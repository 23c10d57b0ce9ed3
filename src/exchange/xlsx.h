// The first sheet of an .xlsx workbook, as text (ECMA-376 part 1, SpreadsheetML).
//
// Read: shared and inline strings, numbers as they are stored, true and false, error words, the
// kept results of formulas. Numbers that the workbook shows as dates are left as the number and
// said, never read as dates: two calendars and a false leap day make that a guess.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "exchange/table.h"

namespace backmark::exchange {

// Whether the bytes begin like a zip archive, which every .xlsx is.
bool is_zip(std::string_view bytes);

// Problems: bad_input (damaged, no headings), refused (another office format, or behind a
// password), not_found (no such sheet: the sheets there are named).
Result<Table> read_xlsx(std::string_view bytes,
                        const std::string& name,
                        const std::string& sheet);

}  // namespace backmark::exchange
