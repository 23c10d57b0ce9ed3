// Making stated odds agree with what is seen on pieces whose answer is known.
#pragma once

#include <vector>

#include "evidence/year_grid.h"

namespace backmark::evidence {

// One prediction whose answer is known: cumulated over the cells of a grid, and the answer.
struct Known {
  std::vector<double> cumulative;  // cells + 1 entries, from 0 to 1
  YearSpan stated;
  double judged = 1;
};

// The histogram of ranks (probability integral transform, Dawid 1984, "Statistical theory: the
// prequential approach") of the stated spans, evened out with pseudo-counts. A prediction is
// mended by sending its cumulative curve through the histogram's own.
class RankMap {
 public:
  RankMap() = default;  // changes nothing
  RankMap(const YearGrid& grid,
          const std::vector<Known>& known,
          std::size_t cells,
          double pseudo_count);
  // Share of answers at or below rank 0 <= rank <= 1; rising from 0 to 1.
  double operator()(double rank) const;
  // The map applied to one probability a cell.
  std::vector<double> mend(const std::vector<double>& p) const;
  const std::vector<double>& histogram() const { return histogram_; }  // sums to 1; empty: none

 private:
  std::vector<double> histogram_;
};

// "Made before year Y": log odds = offset + slope * log odds given, fitted by penalised maximum
// likelihood (ridge 1 towards slope 1 and offset 0).
struct OddsMap {
  double offset = 0;
  double slope = 1;
  double answers = 0;  // weight of the answers it was learned from

  double operator()(double p) const;
};

struct YesNo {
  double p = 0;  // given
  bool yes = false;
  double judged = 1;
};

OddsMap fit_odds(const std::vector<YesNo>& answers);

}  // namespace backmark::evidence
