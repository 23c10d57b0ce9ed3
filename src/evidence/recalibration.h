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

// A prediction, the years it should have met, and the year by which the piece was there.
struct Arrival {
  const std::vector<double>* p = nullptr;  // one a cell
  YearSpan stated;
  Year latest;
  double judged = 1;
};

// How long pieces are about before they are first met with (bought, pictured, given): for each
// stretch of lag (latest - made) a factor r(lag), found by proportional fitting (four rounds of
//     r <- r (seen + pseudo) / (given + pseudo)),
// so that predictions put as many pieces into each stretch as are seen there: pieces bought new
// and old family pieces both count as often as they occur. A year after `latest` keeps the
// factor `after`.
class LagMap {
 public:
  // Without arrivals: 1 up to `latest`, `after` beyond.
  LagMap(const YearGrid& grid,
         const std::vector<Arrival>& arrivals,
         double after,
         double pseudo_count);
  // From factors found before.
  LagMap(const YearGrid& grid, std::vector<double> ratio);
  LagMap() = default;  // changes nothing
  // Multiplies and normalises.
  void apply(std::vector<double>& p, Year latest) const;
  const std::vector<double>& ratio() const { return ratio_; }

 private:
  std::size_t stretch(std::size_t cell, Year latest) const;
  YearGrid grid_;
  double scale_ = 1;
  std::vector<double> ratio_;  // after `latest` first, then longer and longer lags
};

// The histogram of ranks (probability integral transform, Dawid 1984, "Statistical theory: the
// prequential approach") of the stated spans, evened out with pseudo-counts. A prediction is
// mended by sending its cumulative curve through the histogram's own.
class RankMap {
 public:
  RankMap() = default;  // changes nothing
  explicit RankMap(std::vector<double> histogram) : histogram_(std::move(histogram)) {}
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
