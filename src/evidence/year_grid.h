// Years in cells: the working axis of the style engine.
#pragma once

#include <cstddef>
#include <vector>

#include "base/year.h"

namespace backmark::evidence {

// Cells of `width` years from span.first on; the last cell may reach past span.last.
struct YearGrid {
  YearSpan span;
  int width = 1;

  // The narrowest whole width that needs no more than `most` cells.
  static YearGrid over(YearSpan span, int most = 500);

  std::size_t cells() const {
    return static_cast<std::size_t>((span.length() + width - 1) / width);
  }
  // Position of the beginning of a year, in cells; cut to the grid.
  double edge(Year year) const;
  // How many cells a length of years is.
  double in_cells(double years) const { return years / width; }
};

// A share of 1 spread evenly over the cells of `stated`, cut to the grid. Entirely outside: all
// in the nearest cell. Added to `onto` (one entry a cell) times `weight`.
void add_span(const YearGrid& grid, YearSpan stated, double weight, std::vector<double>& onto);

// Running sums: cumulative[c] = p[0] + ... + p[c-1]; one entry more than cells.
std::vector<double> cumulated(const std::vector<double>& p);

// Mass of a cumulated curve between the ends of `stated`, taken as even inside a cell; never
// less than a sliver (1e-12) of the grid.
double mass_between(const YearGrid& grid,
                    const std::vector<double>& cumulative,
                    YearSpan stated);

// One probability a year from one a cell, even inside a cell; sums to what `p` sums to.
std::vector<double> to_years(const YearGrid& grid, const std::vector<double>& p);

// Gaussian smoothing that keeps the mass of every cell: near an end the kernel of a cell is cut
// and scaled up. sd in cells; below 0.05 nothing is done.
class Smoother {
 public:
  Smoother(std::size_t cells, double sd);
  void apply(std::vector<double>& p) const;

 private:
  std::vector<double> kernel_;  // from the centre outwards
  std::vector<double> keep_;    // 1 / what is left of the kernel of a cell
};

}  // namespace backmark::evidence
