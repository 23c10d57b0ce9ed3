// Steps of the chain for what all pieces share: fashions, shares and rates.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "evidence/joint_chain.h"
#include "evidence/joint_fashion.h"

namespace backmark::evidence {

// How often each value was taken in each year as fashion had it, rows x years.
std::vector<int> JointChain::fashion_counts() const {
  std::vector<int> counts(static_cast<Index>(layout_.rows * layout_.years), 0);
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    if (!show_.pieces[i].teaches) {
      continue;
    }
    const PieceState& placed = state_.piece[i];
    for (const RecordedComponent& part : frames_[i].components) {
      const int replaced_year = placed.replaced_year[static_cast<Index>(part.component)];
      const int year = replaced_year >= 0 ? replaced_year : placed.year;
      for (Index k = 0; k < part.row.size(); ++k) {
        if (placed.own[static_cast<Index>(part.character[k])] == 0) {
          ++counts[layout_.cell(part.row[k], year)];
        }
      }
    }
  }
  if (settings_.flat_habit_base) {
    return counts;
  }
  for (int m = 1; m <= layout_.makers; ++m) {
    const auto at = static_cast<Index>(m);
    const int middle = (state_.start[at] + state_.end[at]) / 2;
    for (int row = 0; row < layout_.rows; ++row) {
      counts[layout_.cell(row, middle)] +=
          tables_[at * static_cast<Index>(layout_.rows) + static_cast<Index>(row)];
    }
  }
  return counts;
}

void JointChain::redraw_fashion() {
  const std::vector<int> counts = fashion_counts();
  for (Index c = 0; c < show_.characters.size(); ++c) {
    Sticks sticks{show_.characters[c].values, layout_.years, std::move(state_.stick[c])};
    const auto from =
        counts.begin() + static_cast<std::ptrdiff_t>(layout_.cell(layout_.first_row[c], 0));
    const std::vector<int> own_counts(from, from + sticks.values * layout_.years);
    state_.fashion_step[c] = redraw_sticks(sticks, own_counts, settings_.fashion_step,
                                           settings_.fashion_first_sd, random_);
    state_.stick[c] = std::move(sticks.log_odds);
  }
  rebuild_fashion();
}

std::vector<double> JointChain::draw_dirichlet(const std::vector<double>& weight) {
  std::vector<double> p;
  double total = 0;
  for (const double w : weight) {
    p.push_back(random_.gamma(w));
    total += p.back();
  }
  if (!(total > 0)) {
    // All weights so small that every draw is 0 to the machine: one value then has it all.
    std::fill(p.begin(), p.end(), 0);
    p[random_.weighted(weight)] = 1;
    return p;
  }
  for (double& x : p) {
    x /= total;
  }
  return p;
}

namespace {

constexpr int density_cell = 10;  // years
constexpr double density_weight = 0.5;

}  // namespace

void JointChain::redraw_shares() {
  const auto makers = static_cast<Index>(layout_.makers) + 1;
  std::vector<double> share(makers, settings_.maker_weight);
  share[0] = unlisted_weight(settings_, layout_.makers);
  std::vector<double> named(makers, 1);
  std::vector<double> unnamed(makers, 1);
  std::vector<double> cells(
      static_cast<Index>((layout_.years + density_cell - 1) / density_cell), density_weight);
  std::vector<double> replaced(static_cast<Index>(show_.components), 0);
  std::vector<double> original = replaced;
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    if (!show_.pieces[i].teaches) {
      continue;
    }
    const PieceState& placed = state_.piece[i];
    const auto m = static_cast<Index>(placed.maker);
    share[m] += 1;
    (show_.pieces[i].named ? named : unnamed)[m] += 1;
    if (m == 0) {
      cells[static_cast<Index>(placed.year / density_cell)] += 1;
    }
    for (const RecordedComponent& part : frames_[i].components) {
      const auto g = static_cast<Index>(part.component);
      if (placed.year + settings_.replaced_gap < layout_.years) {
        (placed.replaced_year[g] >= 0 ? replaced : original)[g] += 1;
      }
    }
  }
  state_.maker_share = draw_dirichlet(share);
  for (Index m = 1; m < makers && settings_.signing; ++m) {
    state_.naming[m] = draw_beta(named[m], unnamed[m], random_);
  }
  for (Index g = 0; g < settings_.replaced.size(); ++g) {
    const auto [a, b] = settings_.replaced[g];
    state_.replaced_share[g] = draw_beta(a + replaced[g], b + original[g], random_);
  }
  if (settings_.learn_density) {
    const auto p = draw_dirichlet(cells);
    for (int t = 0; t < layout_.years; ++t) {
      const int cell = t / density_cell;
      const int width = std::min(density_cell, layout_.years - cell * density_cell);
      state_.density[static_cast<Index>(t)] = p[static_cast<Index>(cell)] / width;
    }
  }
}

}  // namespace backmark::evidence
