// Everything the joint sampler does not know, at one moment of one chain.
#pragma once

#include <cstddef>
#include <vector>

#include "evidence/joint_show.h"
#include "evidence/lineage.h"

namespace backmark::evidence {

struct PieceState {
  int maker = 0;
  int year = 0;                    // offset
  std::vector<int> replaced_year;  // one a component; -1 original or not recorded
  std::vector<char> own;           // one a character; 1: the maker's habit, not the fashion
};

struct JointState {
  std::vector<std::vector<double>> stick;  // a character: (values - 1) x years log-odds
  std::vector<std::size_t> fashion_step;   // index into the settings' grid
  std::vector<double> habit_share;         // w_c
  std::vector<std::size_t> concentration;  // index into the settings' grid
  std::vector<double> replaced_share;      // rho, one a component
  std::vector<double> maker_share;         // 0..K, sums to 1
  std::vector<double> naming;              // 0..K, chance that a piece bears the name; [0] is 0
  std::vector<double> open_share;          // 0..K, makers of pieces that do not teach
  std::vector<double> density;             // years of unlisted hands, sums to 1
  std::vector<int> start;                  // 0..K offsets; [0] the whole grid
  std::vector<int> end;
  std::vector<LineageState> lineage;
  std::vector<double> doubt_share;  // q, one a kind
  std::vector<PieceState> piece;
};

// Where the values of each character stand in one flat list of rows (a row is a character's
// value).
struct JointLayout {
  explicit JointLayout(const JointShow& show);
  int years = 0;
  int rows = 0;
  int makers = 0;              // K, without the unlisted hand
  std::vector<int> first_row;  // one a character
  std::vector<int> character;  // one a row
  std::size_t cell(int row, int year) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(years) +
           static_cast<std::size_t>(year);
  }
};

}  // namespace backmark::evidence
