#include "base/edtf_years.h"

#include <limits>

#include "base/text.h"

namespace backmark {

namespace {

Year saturated(std::int64_t year) {
  using Limits = std::numeric_limits<std::int32_t>;
  return {
      static_cast<std::int32_t>(std::clamp<std::int64_t>(year, Limits::min(), Limits::max()))};
}

// "195X" or "19XX" where the span is just a decade or century of four-digit years.
std::optional<std::string> write_masked(YearSpan span) {
  const std::int64_t first = span.first.value;
  const std::int64_t last = span.last.value;
  if (first < 0 || last > 9999) {
    return std::nullopt;
  }
  if (first % 100 == 0 && last == first + 99) {
    return fmt::format("{:02}XX", first / 100);
  }
  if (first % 10 == 0 && last == first + 9) {
    return fmt::format("{:03}X", first / 10);
  }
  return std::nullopt;
}

}  // namespace

std::optional<YearSpan> YearBounds::span() const {
  if (!earliest || !latest) {
    return std::nullopt;
  }
  return YearSpan{*earliest, *latest};
}

bool YearBounds::allows(Year year) const {
  return (!earliest || *earliest <= year) && (!latest || year <= *latest);
}

YearBounds year_bounds(const Edtf& edtf) {
  YearBounds bounds;
  if (edtf.earliest) {
    bounds.earliest = saturated(edtf.earliest->year);
  }
  if (edtf.latest) {
    bounds.latest = saturated(edtf.latest->year);
  }
  return bounds;
}

std::string write_edtf_year(Year year) {
  const std::int64_t value = year.value;
  if (value > 9999 || value < -9999) {
    return fmt::format("Y{}", value);
  }
  return value < 0 ? fmt::format("-{:04}", -value) : fmt::format("{:04}", value);
}

std::string write_edtf(const YearBounds& bounds, bool approximate, bool uncertain) {
  const std::string_view mark = approximate ? (uncertain ? "%" : "~") : (uncertain ? "?" : "");
  if (!bounds.earliest && !bounds.latest) {
    return "";
  }
  if (!bounds.earliest) {
    return fmt::format("../{}{}", write_edtf_year(*bounds.latest), mark);
  }
  if (!bounds.latest) {
    return fmt::format("{}{}/..", write_edtf_year(*bounds.earliest), mark);
  }
  const YearSpan span{std::min(*bounds.earliest, *bounds.latest),
                      std::max(*bounds.earliest, *bounds.latest)};
  const std::string first = write_edtf_year(span.first);
  if (span.first == span.last) {
    return fmt::format("{}{}", first, mark);
  }
  if (const auto masked = write_masked(span)) {
    return fmt::format("{}{}", *masked, mark);
  }
  return fmt::format("{}{}/{}{}", first, mark, write_edtf_year(span.last), mark);
}

}  // namespace backmark
