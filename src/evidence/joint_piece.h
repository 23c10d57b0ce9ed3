// The weight of every (maker, year) for one piece, given the shared parts.
//
// Factors are scaled by the number of values of each character, so a piece that tells nothing
// has weight about 1 and products of many characters stay within range.
#pragma once

#include <vector>

#include "evidence/joint_state.h"

namespace backmark::evidence {

// Shared parts laid out for the kernel: rows are values of characters, see JointLayout.
struct SharedTables {
  std::vector<float> fashion;      // rows x years: V pi
  std::vector<float> fashion_log;  // rows x years: ln (V pi)
  std::vector<float> habit;        // (0..K) x rows: w V theta, habits summed out
  std::vector<int> own;            // (0..K) x rows: pieces' choices that were own
  std::vector<int> own_total;      // (0..K) x characters
  std::vector<std::vector<std::vector<double>>> variant;  // lineage, variant, year
};

// The recorded characters of one component of a piece.
struct RecordedComponent {
  int component = 0;
  std::vector<int> character;
  std::vector<int> row;
};

// What of a piece never changes while chains run.
struct PieceFrame {
  std::vector<RecordedComponent> components;
  std::vector<float> year_weight;  // one a year of the window, doubts summed out
  std::vector<float> sure_weight;  // the same without doubts; empty: the piece has none
  int first = 0;                   // window of years with any weight
  int last = 0;
};

PieceFrame frame_of(const JointPiece& piece, const JointShow& show, const JointLayout& layout);

// One maker's share of the table: weights of years first..last start at `place`.
struct MakerCells {
  int maker = 0;
  int first = 0;
  int last = -1;
  std::size_t place = 0;
  double total = 0;
};

class PieceWeigher {
 public:
  PieceWeigher(const JointShow& show, const JointSettings& settings, const JointLayout& layout);

  // Fills the table for the makers allowed. `maker_prior`: 0..K, without the 1/L of spans.
  // Returns the sum of all weights (0: nothing is possible).
  double weigh(const JointPiece& piece,
               const PieceFrame& frame,
               const JointState& state,
               const SharedTables& shared,
               const std::vector<double>& maker_prior);

  const std::vector<MakerCells>& makers() const { return makers_; }
  double weight(const MakerCells& cells, int year) const {
    return weight_[cells.place + static_cast<std::size_t>(year - cells.first)];
  }
  // Of the component at `place` in the frame, at a year: fashion alone, prod V pi.
  float fashion_at(std::size_t place, int year) const { return fashion_[place][year_at(year)]; }
  // rho R(t), 0 where no replacement can be told.
  float later_at(std::size_t place, int year) const { return later_[place][year_at(year)]; }

 private:
  static std::size_t year_at(int year) { return static_cast<std::size_t>(year); }
  void weigh_fashion(const PieceFrame& frame,
                     const JointState& state,
                     const SharedTables& shared);
  void weigh_maker(MakerCells& cells,
                   const PieceFrame& frame,
                   const JointState& state,
                   const SharedTables& shared,
                   double prior);
  void multiply_component(const RecordedComponent& part,
                          std::size_t place,
                          const MakerCells& cells,
                          const JointState& state,
                          const SharedTables& shared);

  const JointShow& show_;
  const JointSettings& settings_;
  const JointLayout& layout_;
  std::vector<std::vector<float>> fashion_;
  std::vector<std::vector<float>> later_;
  std::vector<float> evidence_;  // E(t) with the mark's variant, one a year
  std::vector<float> part_;      // scratch, one a year
  std::vector<float> row_;       // scratch, one a year of a maker
  std::vector<double> weight_;
  std::vector<MakerCells> makers_;
};

}  // namespace backmark::evidence
