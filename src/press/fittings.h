// The kinds of fitting that the book's pieces have, as values: what the plate of fittings
// shows.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "press/job.h"
#include "press/makers.h"
#include "press/prose.h"

namespace backmark::press {

struct FittingKind {
  std::string fitting;                  // "bar slide"
  std::string variant;                  // "second kind", a legend, a bore; may be empty
  Places places;                        // of the book, on which it was seen
  std::optional<YearSpan> years;        // as seen_in, of pieces that are charted
  const words::Place* shown = nullptr;  // whose back takes least room
  const model::Photograph* photograph = nullptr;  // null: none has
  std::string meaning;  // what the glossary says of it, its first clause; may be empty
};

// Fittings by their first years, the variants of one by theirs. A piece whose variant nobody
// made out counts for its fitting only where no variants are known.
std::vector<FittingKind> fitting_kinds(const PressJob& job,
                                       const words::Numbering& numbering,
                                       const Prose& glossary,
                                       YearSpan span);

}  // namespace backmark::press
