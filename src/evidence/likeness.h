// How alike pieces are: distance weights learned from what the likeness is to foretell.
#pragma once

#include <cstdint>
#include <vector>

#include "base/result.h"
#include "evidence/distance.h"
#include "evidence/watch.h"

namespace backmark::evidence {

// K_i(x) = w_i exp(- sum_f d_f D_f(x, i)); `open` is added to the sum of all K as a share that
// belongs to no piece (the overall density of years; a hand not on the list).
struct Likeness {
  std::vector<double> d;  // one for each character, > 0
  double open = 1;        // > 0
};

// Distances of all pairs of up to a few thousand pieces: of row j the pieces before it, plane
// by plane. kinds * n * (n - 1) / 2 bytes.
class PairTable {
 public:
  PairTable(const StyleTable& table, const DistancePool& pool, const Watch& watch);
  std::size_t size() const { return size_; }
  std::size_t kinds() const { return step_.size(); }
  float step(std::size_t kind) const { return step_[kind]; }
  // bytes[kind * j + i], i < j.
  const std::uint8_t* row(std::size_t j) const {
    return bytes_.data() + step_.size() * (j * (j - 1) / 2);
  }

 private:
  std::size_t size_ = 0;
  std::vector<float> step_;
  std::vector<std::uint8_t> bytes_;
};

// What the likeness is to foretell: how much of piece i's label falls on piece j's truth.
class Agreement {
 public:
  virtual ~Agreement() = default;
  // For i in [0, j): forth[i] = share of i's label on j's truth, back[i] = of j's on i's truth.
  virtual void row(std::size_t j, float* forth, float* back) const = 0;
  // Share of the open part on j's truth.
  virtual double open(std::size_t j) const = 0;
};

struct LikenessTask {
  const PairTable& pairs;
  const Agreement& agreement;
  std::vector<int> lot;         // of each piece; pairs of one lot have K = 0
  std::vector<float> evidence;  // w_i
  std::vector<double> judged;   // weight of piece j in the score
  std::vector<int> tie;         // characters with the same number (0, 1, ...) share one weight
  Likeness prior;               // centre of the ridge on log d
  double ridge = 1;             // ridge / 2 * (log d - log prior)^2, and the same on log open
};

// Leave-one-lot-out score, to be made small:
//   - sum_j judged_j log[(sum_i K_i a(i,j) + open a0(j)) / (sum_i K_i + open)] + ridge
// and its slope along log d of each tie, then log open.
class LikenessScore {
 public:
  LikenessScore(const LikenessTask& task, const Watch& watch);
  double operator()(const std::vector<double>& log_weights, std::vector<double>& slope);
  Likeness likeness(const std::vector<double>& log_weights) const;
  std::vector<double> start() const;

 private:
  struct Share;
  void gather(std::size_t share, const std::vector<float>& weights);
  void push_back(std::size_t share);

  const LikenessTask& task_;
  const Watch& watch_;
  std::size_t ties_ = 0;
  std::vector<std::size_t> rows_;  // first row of each share of the work
  std::vector<float> kernel_;      // exp(-distance) of each pair, 0 inside a lot
  std::vector<double> hit_;        // of each piece: sum of K a
  std::vector<double> all_;        // of each piece: sum of K
  std::vector<float> by_hit_;      // judged / hit
  std::vector<float> by_all_;      // judged / all
  std::vector<std::vector<double>> part_hit_, part_all_, part_slope_;
};

Result<Likeness> fit_likeness(const LikenessTask& task, const Watch& watch);

// exp(- sum_f d_f D_f) to the first `count` pieces from the bytes of a row; `scaled` holds
// d_f * step_f.
void kernel_row(const std::uint8_t* bytes,
                std::size_t count,
                const std::vector<float>& scaled,
                float* kernel);

}  // namespace backmark::evidence
