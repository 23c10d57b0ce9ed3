// Changes of the marks of one lineage, drawn while the years of the pieces that bear them are
// summed out.
//
// A piece with variant v has chance  sum_t f(t) [(1 - e) (G(t - b_v) - G(t - b_{v+1})) + e /
// V], with f what else is known of its year, e the share of strays and G, b, V as in lineage.h.
// Given the overlap the sum over t needs U(b) = sum_t f(t) G(t - b) alone, a mean of tail sums
// of f, so that one change is drawn over all its places in (years x pieces).
#pragma once

#include <vector>

#include "evidence/lineage.h"

namespace backmark::evidence {

class UndatedMarks {
 public:
  // `stray`: share of marks out of their order, 0 to 1.
  UndatedMarks(int years, int variants, double stray);

  // A piece with this variant and the weight of each year apart from it (any scale, not all 0).
  // Returns its place.
  std::size_t add(int variant, std::vector<double> weight);

  // The overlap given the changes (equal prior over `overlaps`), then each change in turn given
  // its neighbours; each an exact draw.
  void redraw(LineageState& state, const std::vector<int>& overlaps, Random& random) const;

  // The year of the piece at `place`; `curves`: p(variant | t), strays included.
  int draw_year(std::size_t place,
                const std::vector<std::vector<double>>& curves,
                Random& random) const;

  // ln of the chance of all variants seen, years summed out, up to what does not depend on the
  // state.
  double evidence(const LineageState& state) const;

 private:
  using Index = std::size_t;
  struct Piece {
    int variant = 0;
    std::vector<double> weight;  // one a year, sums to 1
    std::vector<double> tails;   // running sums of the tail sums, see tail_mean
  };
  double tail_mean(const Piece& piece, int change, int overlap) const;
  double from_change(const Piece& piece, const LineageState& state, int change) const;
  double chance(double from, double to) const;
  void redraw_change(LineageState& state, int change, Random& random) const;

  int years_;
  int variants_;
  double stray_;
  std::vector<Piece> pieces_;
  std::vector<std::vector<Index>> bearing_;  // by variant: places of its pieces
};

}  // namespace backmark::evidence
