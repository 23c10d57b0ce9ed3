// Steps of the chain for makers' habits: how large their share is, how firmly they follow
// fashion.
#include <algorithm>
#include <cmath>

#include "evidence/draw.h"
#include "evidence/joint_chain.h"

namespace backmark::evidence {

// theta_m(c) of all makers, (0..K) x values, given the choices flagged as own.
std::vector<double> JointChain::draw_theta(Index character) {
  const int values = show_.characters[character].values;
  const double a = settings_.concentration[state_.concentration[character]];
  std::vector<double> theta(static_cast<Index>((layout_.makers + 1) * values), 0);
  for (int m = 1; m <= layout_.makers; ++m) {
    std::vector<double> weight;
    for (int v = 0; v < values; ++v) {
      const int row = layout_.first_row[character] + v;
      const Index at =
          static_cast<Index>(m) * static_cast<Index>(layout_.rows) + static_cast<Index>(row);
      weight.push_back(a * base_at(row, m) / values + shared_.own[at]);
    }
    const auto drawn = draw_dirichlet(weight);
    std::copy(drawn.begin(), drawn.end(), theta.begin() + m * values);
  }
  return theta;
}

namespace {

// Fashion's and habit's chance of each choice that either could have made.
struct Choices {
  std::vector<std::size_t> piece;
  std::vector<double> fashion;
  std::vector<double> own;
};

double share_log(double w, const Choices& choices, std::pair<double, double> beta) {
  double log_sum = (beta.first - 1) * std::log(w) + (beta.second - 1) * std::log(1 - w);
  double product = 1;
  for (std::size_t i = 0; i < choices.own.size(); ++i) {
    product *= (1 - w) * choices.fashion[i] + w * choices.own[i];
    if (i % 8 == 7) {
      log_sum += std::log(product);
      product = 1;
    }
  }
  return log_sum + std::log(product);
}

// Neal 2003, "Slice sampling": the slice is sought by shrinking 0..1 towards the present value.
double slice_share(double w,
                   const Choices& choices,
                   std::pair<double, double> beta,
                   Random& random) {
  const double level = share_log(w, choices, beta) - random.exponential();
  double low = 0;
  double high = 1;
  while (true) {
    const double tried = low + (high - low) * random.uniform();
    if (tried > 0 && tried < 1 && share_log(tried, choices, beta) >= level) {
      return tried;
    }
    (tried < w ? low : high) = tried;
    if (high - low < 1e-12) {
      return w;
    }
  }
}

}  // namespace

// w_c with the flags summed out, then the flags.
void JointChain::redraw_share(Index character, const std::vector<double>& theta) {
  const int values = show_.characters[character].values;
  const auto component = static_cast<Index>(show_.characters[character].component);
  Choices choices;
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    const PieceState& placed = state_.piece[i];
    const int value = show_.pieces[i].values[character];
    if (!show_.pieces[i].teaches || value < 0 || placed.maker == 0 ||
        placed.replaced_year[component] >= 0) {
      continue;
    }
    choices.piece.push_back(i);
    choices.fashion.push_back(static_cast<double>(
        shared_.fashion[layout_.cell(layout_.first_row[character] + value, placed.year)]));
    choices.own.push_back(values * theta[static_cast<Index>(placed.maker * values + value)]);
  }
  double& w = state_.habit_share[character];
  w = slice_share(w, choices, settings_.habit_share, random_);
  for (Index k = 0; k < choices.piece.size(); ++k) {
    const double own = w * choices.own[k];
    const double fashion = (1 - w) * choices.fashion[k];
    state_.piece[choices.piece[k]].own[character] =
        random_.chance(own / (own + fashion)) ? 1 : 0;
  }
}

void JointChain::redraw_habits() {
  for (Index c = 0; c < show_.characters.size(); ++c) {
    redraw_share(c, draw_theta(c));
  }
  rebuild_counts();
}

// Antoniak's table counts: how many of the own choices went back to the base of the habit.
void JointChain::redraw_tables() {
  if (settings_.fault == SamplerFault::stale_tables &&
      std::any_of(tables_.begin(), tables_.end(), [](int n) { return n > 0; })) {
    return;
  }
  for (int m = 1; m <= layout_.makers; ++m) {
    for (int row = 0; row < layout_.rows; ++row) {
      const auto c = static_cast<Index>(layout_.character[static_cast<Index>(row)]);
      const Index at =
          static_cast<Index>(m) * static_cast<Index>(layout_.rows) + static_cast<Index>(row);
      const double weight = settings_.concentration[state_.concentration[c]] * base_at(row, m) /
                            show_.characters[c].values;
      tables_[at] = 0;
      for (int n = 0; n < shared_.own[at]; ++n) {
        tables_[at] += random_.chance(weight / (weight + n)) ? 1 : 0;
      }
    }
  }
}

void JointChain::redraw_concentration() {
  if (settings_.concentration.size() == 1) {
    return;
  }
  for (Index c = 0; c < show_.characters.size(); ++c) {
    std::vector<double> log_p;
    int tables = 0;
    for (int m = 1; m <= layout_.makers; ++m) {
      for (int v = 0; v < show_.characters[c].values; ++v) {
        tables += tables_[static_cast<Index>(m) * static_cast<Index>(layout_.rows) +
                          static_cast<Index>(layout_.first_row[c] + v)];
      }
    }
    for (const double a : settings_.concentration) {
      double sum = tables * std::log(a);
      for (int m = 1; m <= layout_.makers; ++m) {
        const int n = shared_.own_total[static_cast<Index>(m) * show_.characters.size() + c];
        // ln Gamma(a) - ln Gamma(a + n), without the global state of lgamma.
        double product = 1;
        for (int k = 0; k < n; ++k) {
          product *= a + k;
          if (k % 16 == 15) {
            sum -= std::log(product);
            product = 1;
          }
        }
        sum -= std::log(product);
      }
      log_p.push_back(sum);
    }
    state_.concentration[c] = draw_log(std::move(log_p), random_);
  }
}

}  // namespace backmark::evidence
