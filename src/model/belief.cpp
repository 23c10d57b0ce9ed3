#include "model/belief.h"

#include <algorithm>

namespace backmark::model {

double YearBelief::inside(Year first, Year last) const {
  const int from = std::max(0, first - span.first);
  const int to = std::min(span.length() - 1, last - span.first);
  double sum = 0;
  for (int cell = from; cell <= to; ++cell) {
    sum += p[static_cast<std::size_t>(cell)];
  }
  return sum;
}

double MakerBelief::of(Id<Maker> maker) const {
  const auto at = std::find_if(makers.begin(), makers.end(),
                               [maker](const MakerChance& row) { return row.maker == maker; });
  return at == makers.end() ? 0 : at->p;
}

const PieceBelief* Beliefs::of(Id<Piece> piece) const {
  const auto at =
      std::lower_bound(pieces.begin(), pieces.end(), piece,
                       [](const PieceBelief& row, Id<Piece> want) { return row.piece < want; });
  return at != pieces.end() && at->piece == piece ? &*at : nullptr;
}

}  // namespace backmark::model
