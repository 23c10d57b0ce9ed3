// Any bytes: parse_edtf answers or refuses in words, keeps the text, and its years write and
// read back the same.
#include <cstdlib>
#include <limits>

#include "base/edtf_years.h"

namespace {

void demand(bool holds) {
  if (!holds) {
    std::abort();
  }
}

bool within_32_bits(const std::optional<backmark::CalendarDay>& day) {
  using Limits = std::numeric_limits<std::int32_t>;
  return !day || (day->year >= Limits::min() && day->year <= Limits::max());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(bytes), size);
  const auto edtf = backmark::parse_edtf(text);
  if (!edtf) {
    demand(!edtf.problem().what.empty() && !edtf.problem().fix.empty());
    return 0;
  }
  demand(edtf->text == text);
  demand(edtf->earliest || edtf->latest);
  demand(!edtf->earliest || !edtf->latest || *edtf->earliest <= *edtf->latest);
  if (within_32_bits(edtf->earliest) && within_32_bits(edtf->latest)) {
    const auto bounds = backmark::year_bounds(*edtf);
    const auto again = backmark::parse_edtf(backmark::write_edtf(bounds));
    demand(again.ok() && backmark::year_bounds(*again) == bounds);
  }
  return 0;
}
