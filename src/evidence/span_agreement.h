// What comparanda of years are to foretell: the stated years of the other pieces.
#pragma once

#include <cstdint>
#include <map>
#include <vector>

#include "evidence/comparanda.h"

namespace backmark::evidence {

// How much of piece i's smoothed span falls on the stated span of piece j.
class SpanAgreement : public Agreement {
 public:
  SpanAgreement(const StyleTable& table,
                const std::vector<std::size_t>& members,
                const YearGrid& grid,
                double smoothing_cells,
                const OverallDensity& overall) {
    SpanCurves spans(grid, smoothing_cells);
    std::map<int, std::vector<double>> by_lot;
    for (const std::size_t member : members) {
      const auto& piece = table.pieces[member];
      span_.push_back(static_cast<std::uint32_t>(spans.add(*piece.stated)));
      auto& sums = by_lot[piece.lot];
      if (sums.empty()) {
        sums = cumulated(overall.without(piece.lot));
      }
      open_.push_back(mass_between(grid, sums, *piece.stated));
    }
    count_ = spans.size();
    forth_ = spans.masses();
    back_.resize(forth_.size());
    for (std::size_t u = 0; u < count_; ++u) {
      for (std::size_t v = 0; v < count_; ++v) {
        back_[v * count_ + u] = forth_[u * count_ + v];
      }
    }
  }

  void row(std::size_t j, float* forth, float* back) const override {
    const float* to_j = back_.data() + span_[j] * count_;
    const float* from_j = forth_.data() + span_[j] * count_;
    for (std::size_t i = 0; i < j; ++i) {
      forth[i] = to_j[span_[i]];
      back[i] = from_j[span_[i]];
    }
  }
  double open(std::size_t j) const override { return open_[j]; }

 private:
  std::vector<std::uint32_t> span_;
  std::vector<double> open_;
  std::size_t count_ = 0;
  std::vector<float> forth_, back_;  // [from * count + to], and turned over
};

}  // namespace backmark::evidence
