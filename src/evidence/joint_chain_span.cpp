// Steps of the chain for makers' working spans, the years of their pieces summed out.
#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>
#include <tuple>

#include "evidence/draw.h"
#include "evidence/joint_chain.h"

namespace backmark::evidence {

// The pieces of one maker: those now given to it, and every piece that is its own or an
// unlisted hand's and bears nothing else, whose maker is summed out too. Else a span would hold
// the pieces at its ends, and they the span.
struct JointChain::Members {
  std::vector<Index> piece;
  std::vector<std::vector<double>> sum;  // running over years of the likelihood; last entry 1
  std::vector<double> stray;  // chance to be an unlisted hand's, over that to be this maker's
  std::vector<double> middle_log;  // by middle year of the span: evidence of the habits' base

  double chance(Index i, int start, int end, double spread) const {
    return (sum[i][static_cast<Index>(end) + 1] - sum[i][static_cast<Index>(start)]) * spread +
           stray[i];
  }
};

// The one listed maker that a piece may be by, if its maker can be summed out; else 0.
int JointChain::lone_maker(Index piece) const {
  const JointPiece& one = show_.pieces[piece];
  if (one.maker >= 0 || one.maker_weight.empty() || !frames_[piece].components.empty()) {
    return 0;
  }
  const auto& weight = one.maker_weight;
  const auto possible = [](double w) { return w > 0; };
  const auto first = std::find_if(weight.begin() + 1, weight.end(), possible);
  return weight[0] > 0 && first != weight.end() &&
                 std::none_of(first + 1, weight.end(), possible)
             ? static_cast<int>(first - weight.begin())
             : 0;
}

// How well each year explains the piece, given its flags; own choices do not depend on the
// year.
std::vector<double> JointChain::year_likelihood(Index piece, int but) const {
  const PieceState& placed = state_.piece[piece];
  const PieceFrame& frame = frames_[piece];
  const int gap = settings_.replaced_gap;
  std::vector<double> like(static_cast<Index>(layout_.years), 0);
  std::transform(frame.year_weight.begin(), frame.year_weight.end(), like.begin() + frame.first,
                 [](float x) { return static_cast<double>(x); });
  for (const JointMark& mark : show_.pieces[piece].marks) {
    if (mark.lineage == but) {
      continue;
    }
    const auto& curve =
        shared_.variant[static_cast<Index>(mark.lineage)][static_cast<Index>(mark.variant)];
    std::transform(like.begin(), like.end(), curve.begin(), like.begin(), std::multiplies<>());
  }
  for (const RecordedComponent& part : frame.components) {
    const auto g = static_cast<Index>(part.component);
    const int replaced_year = placed.replaced_year[g];
    const double rho = settings_.replaced.empty() ? 0 : state_.replaced_share[g];
    for (int t = frame.first; t <= frame.last; ++t) {
      const bool open = t + gap < layout_.years;
      double factor = open ? 1 - rho : 1;
      if (replaced_year >= 0) {
        factor = open && replaced_year >= t + gap ? rho / (layout_.years - t - gap) : 0;
      }
      like[static_cast<Index>(t)] *= factor;
    }
    for (Index i = 0; i < part.row.size() && replaced_year < 0; ++i) {
      if (placed.own[static_cast<Index>(part.character[i])] == 0) {
        const float* pi = shared_.fashion.data() + layout_.cell(part.row[i], 0);
        for (int t = frame.first; t <= frame.last; ++t) {
          like[static_cast<Index>(t)] *= static_cast<double>(pi[t]);
        }
      }
    }
  }
  return like;
}

// The odds of an unlisted hand, given that the maker's years are free.
double JointChain::stray_odds(Index piece, int maker, const std::vector<double>& like) const {
  if (lone_maker_[piece] != maker) {
    return 0;
  }
  const std::vector<double> prior = teaching_prior(show_.pieces[piece]);
  const auto& weight = show_.pieces[piece].maker_weight;
  const auto m = static_cast<Index>(maker);
  const double by_maker = prior[m] * weight[m] * std::accumulate(like.begin(), like.end(), 0.0);
  return prior[0] * weight[0] *
         std::inner_product(like.begin(), like.end(), state_.density.begin(), 0.0) / by_maker;
}

JointChain::Members JointChain::members_of(int maker, const std::vector<Index>& pieces) {
  Members members;
  members.piece = pieces;
  for (const Index piece : pieces) {
    const auto like = year_likelihood(piece, -1);
    std::vector<double> sum(like.size() + 1, 0);
    for (Index t = 0; t < like.size(); ++t) {
      sum[t + 1] = sum[t] + like[t];
    }
    const double total = sum.back();
    for (double& x : sum) {
      x /= total;
    }
    members.sum.push_back(std::move(sum));
    members.stray.push_back(stray_odds(piece, maker, like));
  }
  members.middle_log.assign(static_cast<Index>(layout_.years), 0);
  if (settings_.flat_habit_base) {
    return members;
  }
  for (int row = 0; row < layout_.rows; ++row) {
    const int n = tables_[static_cast<Index>(maker) * static_cast<Index>(layout_.rows) +
                          static_cast<Index>(row)];
    if (n > 0) {
      const float* log_pi = shared_.fashion_log.data() + layout_.cell(row, 0);
      for (Index t = 0; t < members.middle_log.size(); ++t) {
        members.middle_log[t] += n * static_cast<double>(log_pi[t]);
      }
    }
  }
  return members;
}

// One exact draw along a line of spans: 0 the start, 1 the end, 2 both together.
void JointChain::move_span(int maker, int direction, const Members& members) {
  const auto m = static_cast<Index>(maker);
  const SpanTable& table = span_tables_[m - 1];
  const int length = state_.end[m] - state_.start[m];
  int s = direction == 1 ? state_.start[m] : 0;
  int e = direction == 0 ? state_.end[m] : direction == 1 ? state_.start[m] : length;
  std::vector<std::pair<int, int>> spans;
  for (; s <= e && e < layout_.years;
       s += direction != 1 ? 1 : 0, e += direction != 0 ? 1 : 0) {
    if (e - s < table.longest()) {
      spans.emplace_back(s, e);
    }
  }
  std::vector<double> log_p;
  std::vector<double> spread;  // of one piece over the years of the span
  std::vector<double> product(spans.size(), 1);
  for (const auto& [start, end] : spans) {
    spread.push_back(settings_.fault == SamplerFault::length_dropped ? 1
                                                                     : 1.0 / (end - start + 1));
    log_p.push_back(table.log_at(start, end) +
                    members.middle_log[static_cast<Index>((start + end) / 2)]);
  }
  for (Index i = 0; i < members.sum.size(); ++i) {
    for (Index k = 0; k < spans.size(); ++k) {
      product[k] *= members.chance(i, spans[k].first, spans[k].second, spread[k]);
    }
    if (i % 8 == 7 || i + 1 == members.sum.size()) {
      for (Index k = 0; k < spans.size(); ++k) {
        log_p[k] = product[k] > 0 ? log_p[k] + std::log(product[k])
                                  : -std::numeric_limits<double>::infinity();
        product[k] = 1;
      }
    }
  }
  if (std::none_of(log_p.begin(), log_p.end(), [](double x) { return std::isfinite(x); })) {
    return;
  }
  std::tie(state_.start[m], state_.end[m]) = spans[draw_log(std::move(log_p), random_)];
}

// Maker where it was summed out, then the year.
void JointChain::redraw_years(const Members& members, int maker) {
  const auto m = static_cast<Index>(maker);
  const double spread = 1.0 / (state_.end[m] - state_.start[m] + 1);
  for (Index i = 0; i < members.piece.size(); ++i) {
    PieceState& placed = state_.piece[members.piece[i]];
    const std::vector<double>& sum = members.sum[i];
    if (lone_maker_[members.piece[i]] == maker) {
      const double all = members.chance(i, state_.start[m], state_.end[m], spread);
      placed.maker = random_.chance(members.stray[i] / all) ? 0 : maker;
    }
    if (placed.maker == 0) {
      std::vector<double> weight = state_.density;
      for (Index t = 0; t < weight.size(); ++t) {
        weight[t] *= sum[t + 1] - sum[t];
      }
      placed.year = static_cast<int>(random_.weighted(weight));
      continue;
    }
    const auto first = sum.begin() + state_.start[m];
    const auto last = sum.begin() + state_.end[m] + 1;
    const double mark = *first + (*last - *first) * random_.uniform();
    const auto above = std::upper_bound(first, last, mark);
    placed.year = static_cast<int>(above - sum.begin()) - 1;
  }
}

void JointChain::redraw_span(int maker, const std::vector<Index>& pieces) {
  const Members members = members_of(maker, pieces);
  if (!show_.makers[static_cast<Index>(maker) - 1].known_span) {
    for (int round = 0; round < 2; ++round) {
      for (const int direction : {0, 1, 2}) {
        move_span(maker, direction, members);
      }
    }
  }
  redraw_years(members, maker);
}

void JointChain::redraw_spans() {
  std::vector<std::vector<Index>> pieces(static_cast<Index>(layout_.makers) + 1);
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    if (show_.pieces[i].teaches) {
      const int maker = lone_maker_[i] > 0 ? lone_maker_[i] : state_.piece[i].maker;
      pieces[static_cast<Index>(maker)].push_back(i);
    }
  }
  for (int m = 1; m <= layout_.makers; ++m) {
    redraw_span(m, pieces[static_cast<Index>(m)]);
  }
}

}  // namespace backmark::evidence
