// The dated pieces most like this one, and what they say of its years.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "evidence/distance.h"
#include "evidence/likeness.h"
#include "evidence/year_grid.h"

namespace backmark::evidence {

// The different stated spans of some pieces, each smoothed once.
class SpanCurves {
 public:
  SpanCurves() = default;
  SpanCurves(const YearGrid& grid, double smoothing_cells);
  std::size_t add(YearSpan stated);  // the number of the span, new or known
  std::size_t size() const { return spans_.size(); }
  YearSpan span(std::size_t number) const { return spans_[number]; }
  // sum of weight[s] * smoothed span s, over the cells.
  std::vector<double> mixed(const std::vector<double>& weight) const;
  // mass[u * size() + v] of smoothed span u between the ends of span v.
  std::vector<float> masses() const;

 private:
  YearGrid grid_;
  std::optional<Smoother> smoother_;
  std::vector<YearSpan> spans_;
  std::map<std::pair<Year, Year>, std::size_t> numbers_;
};

// Density of all stated spans (weighted), smoothed; on request without one lot.
class OverallDensity {
 public:
  OverallDensity() = default;
  OverallDensity(const YearGrid& grid, double smoothing_cells);
  void add(int lot, YearSpan stated, double weight);
  // One probability a cell, every one > 0; flat if nothing is left.
  std::vector<double> without(std::optional<int> lot) const;

 private:
  struct Stated {
    YearSpan span;
    double weight = 0;
  };
  YearGrid grid_;
  std::optional<Smoother> smoother_;
  std::vector<double> all_;
  std::map<int, std::vector<Stated>> lots_;
};

// What each piece of the pool weighs for one asking piece.
struct Told {
  std::vector<float> weight;  // K_i; 0 for the asking piece's own lot
  double all = 0;             // sum of K
};

// p_comp(t | x) = [sum_i K_i Y_i(t) + open * overall(t)] / [sum_i K_i + open], with Y_i the
// stated span of piece i, smoothed.
class Comparanda {
 public:
  Comparanda() = default;
  // `pool` of dated pieces, `evidence` w_i of each.
  Comparanda(const StyleTable& table,
             DistancePool pool,
             std::vector<double> evidence,
             const YearGrid& grid,
             double smoothing_cells);

  void set(Likeness likeness) { likeness_ = std::move(likeness); }
  const Likeness& likeness() const { return likeness_; }
  const DistancePool& pool() const { return pool_; }
  int lot(std::size_t i) const { return lots_[i]; }

  Told told(const std::vector<StyleValue>& values, std::optional<int> lot) const;
  // The same without each of some groups of characters, as if they had not been recorded.
  // First with all of them.
  std::vector<Told> told_without(const std::vector<StyleValue>& values,
                                 std::optional<int> lot,
                                 const std::vector<std::vector<std::size_t>>& groups) const;
  std::vector<double> years(const Told& told, const std::vector<double>& overall) const;
  // The parts d_f D_f of the distance to piece i of the pool, one a character.
  std::vector<double> parts(const std::vector<StyleValue>& values, std::size_t i) const;
  // The `count` heaviest pieces of the pool, heaviest first.
  static std::vector<std::size_t> heaviest(const Told& told, std::size_t count);

 private:
  DistancePool pool_;
  std::vector<double> evidence_;
  std::vector<int> lots_;
  std::vector<std::size_t> span_;
  SpanCurves spans_;
  Likeness likeness_;
};

}  // namespace backmark::evidence
