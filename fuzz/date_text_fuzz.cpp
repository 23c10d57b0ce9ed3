// Any bytes: a reading keeps its text, never turns its bounds round, writes EDTF that parses to
// the same years or leaves it empty, and says what it did not understand.
#include <cstdlib>

#include "base/date_text.h"
#include "base/edtf.h"
#include "base/maker_dates.h"

namespace {

void demand(bool holds) {
  if (!holds) {
    std::abort();
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(bytes), size);
  const auto reading = backmark::read_date_text(text);
  demand(reading.text == text);
  const auto& bounds = reading.bounds;
  demand(!bounds.earliest || !bounds.latest || *bounds.earliest <= *bounds.latest);
  demand(reading.understood || (!bounds.earliest && !bounds.latest));
  if (!reading.edtf.empty()) {
    demand(backmark::parse_edtf(reading.edtf).ok());
  }
  const auto dates = backmark::read_maker_dates(text);
  const auto years = backmark::working_years(dates);
  demand(dates.text == text);
  demand(dates.understood || (!years.from && !years.to));
  return 0;
}
