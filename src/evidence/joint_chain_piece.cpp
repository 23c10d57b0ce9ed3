// Steps of the chain that place one piece: year and maker, replaced parts, own or fashionable
// choices.
#include <cmath>

#include "evidence/joint_chain.h"

namespace backmark::evidence {

void JointChain::count_piece(Index piece, int sign) {
  const PieceState& placed = state_.piece[piece];
  const auto m = static_cast<Index>(placed.maker);
  for (Index c = 0; c < placed.own.size(); ++c) {
    if (placed.own[c] != 0) {
      const int row = layout_.first_row[c] + show_.pieces[piece].values[c];
      shared_.own[m * static_cast<Index>(layout_.rows) + static_cast<Index>(row)] += sign;
      shared_.own_total[m * placed.own.size() + c] += sign;
    }
  }
}

void JointChain::redraw_piece(Index piece, const std::vector<double>& maker_prior) {
  count_piece(piece, -1);
  const std::vector<char> own_before = state_.piece[piece].own;
  const int maker_before = state_.piece[piece].maker;
  for (Index c = 0; c < own_before.size(); ++c) {
    if (own_before[c] != 0) {
      rebuild_habit(maker_before, static_cast<int>(c));
    }
  }
  const double total =
      weigher_.weigh(show_.pieces[piece], frames_[piece], state_, shared_, maker_prior);
  // Nothing possible only while a start is being mended: the piece then stays where it is.
  if (draw_maker_and_year(piece, total)) {
    draw_flags(piece, true);
    if (recording_) {
      add_to_sums(piece, total);
    }
  }
  count_piece(piece, 1);
  const PieceState& placed = state_.piece[piece];
  for (Index c = 0; c < placed.own.size(); ++c) {
    if (placed.own[c] != 0) {
      rebuild_habit(placed.maker, static_cast<int>(c));
    }
  }
}

void JointChain::judge_piece(Index piece, const std::vector<double>& maker_prior) {
  const double total =
      weigher_.weigh(show_.pieces[piece], frames_[piece], state_, shared_, maker_prior);
  if (draw_maker_and_year(piece, total)) {
    draw_flags(piece, false);
    if (recording_) {
      add_to_sums(piece, total);
    }
  }
}

bool JointChain::draw_maker_and_year(Index piece, double total) {
  if (!(total > 0)) {
    return false;
  }
  PieceState& placed = state_.piece[piece];
  double mark = random_.uniform() * total;
  for (const MakerCells& cells : weigher_.makers()) {
    if (mark >= cells.total) {
      mark -= cells.total;
      continue;
    }
    placed.maker = cells.maker;
    placed.year = cells.last;
    for (int t = cells.first; t <= cells.last; ++t) {
      mark -= weigher_.weight(cells, t);
      if (mark < 0) {
        placed.year = t;
        break;
      }
    }
    return true;
  }
  placed.maker = weigher_.makers().back().maker;
  placed.year = weigher_.makers().back().last;
  return true;
}

void JointChain::draw_replacement(Index piece, Index place, bool counted) {
  PieceState& placed = state_.piece[piece];
  const RecordedComponent& part = frames_[piece].components[place];
  const auto g = static_cast<Index>(part.component);
  const auto m = static_cast<Index>(placed.maker);
  placed.replaced_year[g] = -1;
  const auto later = static_cast<double>(weigher_.later_at(place, placed.year));
  if (later <= 0) {
    return;
  }
  double original = 1 - state_.replaced_share[g];
  for (Index i = 0; i < part.row.size(); ++i) {
    const auto pi =
        static_cast<double>(shared_.fashion[layout_.cell(part.row[i], placed.year)]);
    if (placed.maker == 0) {
      original *= pi;
      continue;
    }
    const double w = state_.habit_share[static_cast<Index>(part.character[i])];
    original *=
        (1 - w) * pi + static_cast<double>(shared_.habit[m * static_cast<Index>(layout_.rows) +
                                                         static_cast<Index>(part.row[i])]);
  }
  const double p = later / (later + original);
  if (recording_) {
    sums_[piece].replaced[g] += p;
  }
  if (!random_.chance(p)) {
    return;
  }
  placed.replaced_year[g] = layout_.years - 1;
  if (!counted) {
    return;
  }
  std::vector<double> weight;
  const int from = placed.year + settings_.replaced_gap;
  for (int t = from; t < layout_.years; ++t) {
    weight.push_back(static_cast<double>(weigher_.fashion_at(place, t)));
  }
  placed.replaced_year[g] = from + static_cast<int>(random_.weighted(weight));
}

void JointChain::draw_flags(Index piece, bool counted) {
  PieceState& placed = state_.piece[piece];
  const auto m = static_cast<Index>(placed.maker);
  for (Index place = 0; place < frames_[piece].components.size(); ++place) {
    const RecordedComponent& part = frames_[piece].components[place];
    draw_replacement(piece, place, counted);
    const bool replaced = placed.replaced_year[static_cast<Index>(part.component)] >= 0;
    for (Index i = 0; i < part.row.size() && counted; ++i) {
      const auto c = static_cast<Index>(part.character[i]);
      placed.own[c] = 0;
      if (replaced || placed.maker == 0) {
        continue;
      }
      const double fashion =
          (1 - state_.habit_share[c]) *
          static_cast<double>(shared_.fashion[layout_.cell(part.row[i], placed.year)]);
      double own = static_cast<double>(shared_.habit[m * static_cast<Index>(layout_.rows) +
                                                     static_cast<Index>(part.row[i])]);
      if (settings_.fault == SamplerFault::own_year_base) {
        const double a = settings_.concentration[state_.concentration[c]];
        own += state_.habit_share[c] * a / (a + shared_.own_total[m * placed.own.size() + c]) *
               static_cast<double>(shared_.fashion[layout_.cell(part.row[i], placed.year)]);
      }
      placed.own[c] = random_.chance(own / (own + fashion)) ? 1 : 0;
    }
  }
}

void JointChain::add_to_sums(Index piece, double total) {
  PieceSums& sums = sums_[piece];
  for (const MakerCells& cells : weigher_.makers()) {
    sums.maker[static_cast<Index>(cells.maker)] += cells.total / total;
    for (int t = cells.first; t <= cells.last; ++t) {
      sums.year[static_cast<Index>(t)] += weigher_.weight(cells, t) / total;
    }
  }
  sums.sweeps += 1;
}

}  // namespace backmark::evidence
