// Evidence curves: how each value of each character comes and goes over the years.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "evidence/style_table.h"
#include "evidence/year_grid.h"

namespace backmark::evidence {

struct CurveSettings {
  double smoothing_years = 12;    // sd of the Gaussian over the counts
  double pseudo_per_decade = 5;   // pieces of the overall share added to every decade
  double decade_years = 10;       // length of a "decade"; longer on very long axes
  double window_strength = 0.3;   // times a window's reliability (method-style.md, section 2)
  double window_ends_years = 10;  // sd by which the ends of a window are blurred
};

// For value v of a character, with n_v(t) the weighted pieces that show it (smoothed, per
// cell), n(t) those on which the character is recorded, s_v = n_v / n over all years, a the
// pseudo-count of a cell, and W_v(t) the shape of its stated windows (mean 1; 1 without):
//     l_v(t) = log{ [n_v(t) + a s_v W_v(t)] / [n(t) + a] / s_v }
// A window thus shapes the pseudo-counts and is overruled by pieces; it is never multiplied in.
// Numbers are cut into fifths of the pool. The curve of a piece's value is taken without its
// own lot. Several terms of one character: sum of l_v over the root of their number.
class EvidenceCurves {
 public:
  EvidenceCurves() = default;
  // `evidence`: weight of each member in the counts. Members without a stated span do not
  // count.
  EvidenceCurves(const StyleTable& table,
                 const std::vector<std::size_t>& members,
                 const std::vector<double>& evidence,
                 const YearGrid& bins,
                 const CurveSettings& settings);

  // One line a character, one entry a bin; empty where the piece says nothing. `lot`: left out.
  // Terms must be those the engine keeps (see DistancePool::kept).
  std::vector<std::vector<double>> lines(const std::vector<StyleValue>& values,
                                         std::optional<int> lot) const;

  // The curve of one value, no lot left out: for charts. Empty if nothing is known of it.
  std::vector<double> line(std::size_t character, int term) const;
  // Which of the fifths a number falls in, 0 to 4.
  int fifth(std::size_t character, double number) const;

 private:
  using Counts = std::vector<double>;  // one a bin
  struct Character {
    bool number = false;
    std::vector<double> cuts;                 // of the fifths, ascending
    Counts recorded;                          // n(t)
    std::vector<Counts> shown;                // n_v(t); empty: never shown
    std::vector<std::vector<double>> window;  // W_v(t); empty: none
  };
  struct Member {
    std::size_t span = 0;  // index into spans_
    double weight = 0;
    std::vector<std::vector<int>> terms;  // by character
  };

  std::vector<int> terms_of(std::size_t character, const StyleValue& value) const;
  void add_cuts(const StyleTable& table, const std::vector<std::size_t>& members);
  void add_windows(const StyleTable& table, const CurveSettings& settings);
  std::vector<double> ratio(const Character& character,
                            std::size_t term,
                            const Counts& own_shown,
                            const Counts& own_recorded) const;

  YearGrid bins_;
  double pseudo_ = 0;  // of one bin
  std::vector<Character> characters_;
  std::vector<std::vector<double>> spans_;  // smoothed, mass 1
  std::vector<Member> members_;
  std::vector<std::vector<std::uint32_t>> by_lot_;  // members of a lot
  std::vector<int> lots_;                           // ascending, beside by_lot_
};

}  // namespace backmark::evidence
