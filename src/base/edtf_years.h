// Between EDTF and whole years: what a dating engine or a table of years needs.
#pragma once

#include <optional>
#include <string>

#include "base/edtf.h"
#include "base/year.h"

namespace backmark {

// A first and a last year, each of which may be missing (open or unknown).
struct YearBounds {
  std::optional<Year> earliest;
  std::optional<Year> latest;

  friend bool operator==(const YearBounds&, const YearBounds&) = default;
  // The span, if both ends are there.
  std::optional<YearSpan> span() const;
  bool allows(Year year) const;
};

// The years of the first and last day. A year beyond 32 bits becomes the outermost Year.
YearBounds year_bounds(const Edtf& edtf);

// The shortest EDTF of the bounds: "1950", "195X" and "18XX" for a whole decade and century,
// "1947/1962", "../1937", "1947/.."; each dated end is marked ~ if approximate, ? if uncertain,
// % if both. Bounds that are both missing give "" (EDTF has no word for it); an earliest after
// the latest is turned round.
std::string write_edtf(const YearBounds& bounds,
                       bool approximate = false,
                       bool uncertain = false);

// The year as EDTF writes it: "1985", "-0043", "Y170000002".
std::string write_edtf_year(Year year);

}  // namespace backmark
