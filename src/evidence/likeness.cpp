#include "evidence/likeness.h"

#include <algorithm>
#include <cmath>

#include "evidence/likeness_kernel.h"
#include "evidence/minimise.h"
#include "evidence/parallel.h"

namespace backmark::evidence {

namespace {

constexpr std::size_t shares = 16;

// Row ranges of about equal numbers of pairs.
std::vector<std::size_t> even_rows(std::size_t rows) {
  std::vector<std::size_t> first{0};
  for (std::size_t share = 1; share < shares; ++share) {
    const double part = std::sqrt(static_cast<double>(share) / shares);
    first.push_back(static_cast<std::size_t>(part * static_cast<double>(rows)));
  }
  first.push_back(rows);
  return first;
}

std::size_t pairs_before(std::size_t row) {
  return row == 0 ? 0 : row * (row - 1) / 2;
}

}  // namespace

PairTable::PairTable(const StyleTable& table, const DistancePool& pool, const Watch& watch)
    : size_(pool.size()) {
  for (std::size_t kind = 0; kind < pool.kinds(); ++kind) {
    step_.push_back(pool.step(kind));
  }
  bytes_.resize(pool.kinds() * pairs_before(size_ + 1));
  const auto rows = even_rows(size_);
  in_shares(shares, watch.threads, [&](std::size_t share) {
    for (std::size_t j = rows[share]; j < rows[share + 1] && !watch.stop.stop_requested();
         ++j) {
      pool.row(table.pieces[pool.member(j)].values, j,
               bytes_.data() + pool.kinds() * pairs_before(j));
    }
  });
}

LikenessScore::LikenessScore(const LikenessTask& task, const Watch& watch)
    : task_(task), watch_(watch), rows_(even_rows(task.pairs.size())) {
  for (const int tie : task.tie) {
    ties_ = std::max(ties_, static_cast<std::size_t>(tie) + 1);
  }
  const std::size_t pieces = task.pairs.size();
  kernel_.resize(pairs_before(pieces + 1));
  by_hit_.resize(pieces);
  by_all_.resize(pieces);
  part_hit_.assign(shares, std::vector<double>(pieces));
  part_all_ = part_hit_;
  part_slope_.assign(shares, std::vector<double>(task.tie.size()));
}

std::vector<double> LikenessScore::start() const {
  std::vector<double> logs(ties_ + 1);
  for (std::size_t kind = 0; kind < task_.tie.size(); ++kind) {
    logs[static_cast<std::size_t>(task_.tie[kind])] = std::log(task_.prior.d[kind]);
  }
  logs[ties_] = std::log(task_.prior.open);
  return logs;
}

Likeness LikenessScore::likeness(const std::vector<double>& log_weights) const {
  Likeness found;
  for (const int tie : task_.tie) {
    found.d.push_back(std::exp(log_weights[static_cast<std::size_t>(tie)]));
  }
  found.open = std::exp(log_weights[ties_]);
  return found;
}

// First pass: what each piece is told by the others.
void LikenessScore::gather(std::size_t share, const std::vector<float>& weights) {
  auto& hit = part_hit_[share];
  auto& all = part_all_[share];
  std::fill(hit.begin(), hit.end(), 0.0);
  std::fill(all.begin(), all.end(), 0.0);
  std::vector<float> forth(task_.pairs.size());
  std::vector<float> back(task_.pairs.size());
  for (std::size_t j = rows_[share]; j < rows_[share + 1]; ++j) {
    float* kernel = kernel_.data() + pairs_before(j);
    kernel_row(task_.pairs.row(j), j, weights, kernel);
    task_.agreement.row(j, forth.data(), back.data());
    double hit_j = 0;
    double all_j = 0;
    const double own = task_.evidence[j];
    for (std::size_t i = 0; i < j; ++i) {
      if (task_.lot[i] == task_.lot[j]) {
        kernel[i] = 0;
        continue;
      }
      const double told = static_cast<double>(task_.evidence[i]) * kernel[i];
      const double tells = own * kernel[i];
      hit_j += told * forth[i];
      all_j += told;
      hit[i] += tells * back[i];
      all[i] += tells;
    }
    hit[j] += hit_j;
    all[j] += all_j;
  }
}

// Second pass: d(log share of j) / d(log K_ij), gathered by character.
void LikenessScore::push_back(std::size_t share) {
  auto& slope = part_slope_[share];
  std::fill(slope.begin(), slope.end(), 0.0);
  std::vector<float> forth(task_.pairs.size());
  std::vector<float> back(task_.pairs.size());
  std::vector<float> pull(task_.pairs.size());
  for (std::size_t j = rows_[share]; j < rows_[share + 1]; ++j) {
    const float* kernel = kernel_.data() + pairs_before(j);
    task_.agreement.row(j, forth.data(), back.data());
    const float by_hit = by_hit_[j];
    const float by_all = by_all_[j];
    const float own = task_.evidence[j];
    for (std::size_t i = 0; i < j; ++i) {
      pull[i] = kernel[i] * (task_.evidence[i] * (forth[i] * by_hit - by_all) +
                             own * (back[i] * by_hit_[i] - by_all_[i]));
    }
    const std::uint8_t* bytes = task_.pairs.row(j);
    for (std::size_t kind = 0; kind < slope.size(); ++kind) {
      slope[kind] += weighted_bytes(bytes + kind * j, pull.data(), j);
    }
  }
}

double LikenessScore::operator()(const std::vector<double>& log_weights,
                                 std::vector<double>& slope) {
  const Likeness now = likeness(log_weights);
  const std::size_t pieces = task_.pairs.size();
  std::vector<float> weights;
  for (std::size_t kind = 0; kind < now.d.size(); ++kind) {
    weights.push_back(static_cast<float>(now.d[kind]) * task_.pairs.step(kind));
  }
  in_shares(shares, watch_.threads, [&](std::size_t share) { gather(share, weights); });
  hit_.assign(pieces, 0.0);
  all_.assign(pieces, now.open);
  double value = 0;
  double open_slope = 0;
  for (std::size_t j = 0; j < pieces; ++j) {
    const double open_hit = now.open * task_.agreement.open(j);
    hit_[j] = open_hit;
    for (std::size_t share = 0; share < shares; ++share) {
      hit_[j] += part_hit_[share][j];
      all_[j] += part_all_[share][j];
    }
    hit_[j] = std::max(hit_[j], 1e-30);
    by_hit_[j] = static_cast<float>(task_.judged[j] / hit_[j]);
    by_all_[j] = static_cast<float>(task_.judged[j] / all_[j]);
    value -= task_.judged[j] * std::log(hit_[j] / all_[j]);
    open_slope -= task_.judged[j] * (open_hit / hit_[j] - now.open / all_[j]);
  }
  in_shares(shares, watch_.threads, [&](std::size_t share) { push_back(share); });
  const auto centre = start();
  std::fill(slope.begin(), slope.end(), 0.0);
  for (std::size_t kind = 0; kind < now.d.size(); ++kind) {
    const auto tie = static_cast<std::size_t>(task_.tie[kind]);
    for (std::size_t share = 0; share < shares; ++share) {
      // d log K / d log d_f = - d_f D_f, and the score is minus the log.
      slope[tie] += part_slope_[share][kind] * static_cast<double>(weights[kind]);
    }
  }
  slope[ties_] = open_slope;
  for (std::size_t p = 0; p < slope.size(); ++p) {
    const double off = log_weights[p] - centre[p];
    value += 0.5 * task_.ridge * off * off;
    slope[p] += task_.ridge * off;
  }
  return value;
}

Result<Likeness> fit_likeness(const LikenessTask& task, const Watch& watch) {
  LikenessScore score(task, watch);
  std::vector<double> best = score.start();
  const Smooth smooth = [&](const std::vector<double>& x, std::vector<double>& slope) {
    if (watch.stop.stop_requested()) {  // flat: the descent ends at once
      std::fill(slope.begin(), slope.end(), 0.0);
      return 0.0;
    }
    return score(x, slope);
  };
  Descent descent;
  descent.enough = 1e-5;
  descent.most_steps = 60;
  descent.lowest.assign(best.size(), -7);
  best = minimise(smooth, best, descent);
  if (watch.stop.stop_requested()) {
    return stopped();
  }
  return score.likeness(best);
}

}  // namespace backmark::evidence
