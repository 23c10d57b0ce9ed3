#include "evidence/joint_piece.h"

#include <algorithm>
#include <map>

#include "base/result.h"

namespace backmark::evidence {

namespace {

void keep_sure(const JointPiece& piece, PieceFrame& frame) {
  if (!piece.doubts.empty()) {
    frame.sure_weight = frame.year_weight;
  }
}

}  // namespace

PieceFrame frame_of(const JointPiece& piece, const JointShow& show, const JointLayout& layout) {
  PieceFrame frame;
  std::map<int, RecordedComponent> by_component;
  for (std::size_t c = 0; c < show.characters.size(); ++c) {
    if (piece.values[c] < 0) {
      continue;
    }
    auto& part = by_component[show.characters[c].component];
    part.component = show.characters[c].component;
    part.character.push_back(static_cast<int>(c));
    part.row.push_back(layout.first_row[c] + piece.values[c]);
  }
  for (auto& [component, part] : by_component) {
    frame.components.push_back(std::move(part));
  }
  frame.last = layout.years - 1;
  if (piece.year_weight.empty()) {
    frame.year_weight.assign(static_cast<std::size_t>(layout.years), 1.0F);
    keep_sure(piece, frame);
    return frame;
  }
  const auto& weight = piece.year_weight;
  while (frame.last > 0 && weight[static_cast<std::size_t>(frame.last)] <= 0) {
    --frame.last;
  }
  while (frame.first < frame.last && weight[static_cast<std::size_t>(frame.first)] <= 0) {
    ++frame.first;
  }
  for (int t = frame.first; t <= frame.last; ++t) {
    frame.year_weight.push_back(static_cast<float>(weight[static_cast<std::size_t>(t)]));
  }
  keep_sure(piece, frame);
  return frame;
}

PieceWeigher::PieceWeigher(const JointShow& show,
                           const JointSettings& settings,
                           const JointLayout& layout)
    : show_(show), settings_(settings), layout_(layout) {
  const auto years = static_cast<std::size_t>(layout.years);
  fashion_.assign(static_cast<std::size_t>(show.components), std::vector<float>(years));
  later_ = fashion_;
  evidence_.resize(years);
  part_.resize(years);
  row_.resize(years);
}

void PieceWeigher::weigh_fashion(const PieceFrame& frame,
                                 const JointState& state,
                                 const SharedTables& shared) {
  const auto years = static_cast<std::size_t>(layout_.years);
  const int gap = settings_.replaced_gap;
  for (std::size_t place = 0; place < frame.components.size(); ++place) {
    const RecordedComponent& part = frame.components[place];
    float* product = fashion_[place].data();
    std::fill_n(product, years, 1.0F);
    for (const int row : part.row) {
      const float* pi = shared.fashion.data() + layout_.cell(row, 0);
      for (std::size_t t = 0; t < years; ++t) {
        product[t] *= pi[t];
      }
    }
    std::fill(later_[place].begin(), later_[place].end(), 0.0F);
    if (settings_.replaced.empty()) {
      continue;
    }
    const double rho = state.replaced_share[static_cast<std::size_t>(part.component)];
    double sum = 0;
    for (int t = layout_.years - 1; t >= gap; --t) {
      sum += static_cast<double>(product[t]);
      later_[place][year_at(t - gap)] = static_cast<float>(rho * sum / (layout_.years - t));
    }
  }
}

void PieceWeigher::multiply_component(const RecordedComponent& part,
                                      std::size_t place,
                                      const MakerCells& cells,
                                      const JointState& state,
                                      const SharedTables& shared) {
  const auto length = static_cast<std::size_t>(cells.last - cells.first + 1);
  float* x = part_.data();
  if (cells.maker == 0) {
    std::copy_n(fashion_[place].data() + cells.first, length, x);
  } else {
    std::fill_n(x, length, 1.0F);
    const float* habit = shared.habit.data() + static_cast<std::size_t>(cells.maker) *
                                                   static_cast<std::size_t>(layout_.rows);
    for (std::size_t i = 0; i < part.row.size(); ++i) {
      const auto c = static_cast<std::size_t>(part.character[i]);
      const float fashion_part = static_cast<float>(1 - state.habit_share[c]);
      const float own = habit[part.row[i]];
      const float* pi = shared.fashion.data() + layout_.cell(part.row[i], cells.first);
      float base_part = 0;
      if (settings_.fault == SamplerFault::own_year_base) {
        const double a = settings_.concentration[state.concentration[c]];
        const auto at = static_cast<std::size_t>(cells.maker) * show_.characters.size() + c;
        base_part = static_cast<float>(state.habit_share[c] * a / (a + shared.own_total[at]));
      }
      const float slope = fashion_part + base_part;
      for (std::size_t t = 0; t < length; ++t) {
        x[t] *= slope * pi[t] + own;
      }
    }
  }
  const float* later = later_[place].data() + cells.first;
  float* row = row_.data();
  if (settings_.replaced.empty()) {
    for (std::size_t t = 0; t < length; ++t) {
      row[t] *= x[t];
    }
    return;
  }
  // Replacement is possible up to `gap` years before the end of the grid.
  const int open_to = layout_.years - 1 - settings_.replaced_gap;
  const auto open = static_cast<std::size_t>(
      std::clamp(open_to - cells.first + 1, 0, static_cast<int>(length)));
  const auto keep =
      static_cast<float>(1 - state.replaced_share[static_cast<std::size_t>(part.component)]);
  for (std::size_t t = 0; t < open; ++t) {
    row[t] *= keep * x[t] + later[t];
  }
  for (std::size_t t = open; t < length; ++t) {
    row[t] *= x[t];
  }
}

void PieceWeigher::weigh_maker(MakerCells& cells,
                               const PieceFrame& frame,
                               const JointState& state,
                               const SharedTables& shared,
                               double prior) {
  const auto length = static_cast<std::size_t>(cells.last - cells.first + 1);
  std::copy_n(evidence_.data() + cells.first, length, row_.data());
  for (std::size_t place = 0; place < frame.components.size(); ++place) {
    multiply_component(frame.components[place], place, cells, state, shared);
  }
  cells.place = weight_.size();
  weight_.resize(cells.place + length);
  double* weight = weight_.data() + cells.place;
  const auto m = static_cast<std::size_t>(cells.maker);
  const double flat = prior / (state.end[m] - state.start[m] + 1);
  for (std::size_t t = 0; t < length; ++t) {
    const double share = cells.maker == 0
                             ? prior * state.density[static_cast<std::size_t>(cells.first) + t]
                             : flat;
    weight[t] = share * static_cast<double>(row_[t]);
    cells.total += weight[t];
  }
}

double PieceWeigher::weigh(const JointPiece& piece,
                           const PieceFrame& frame,
                           const JointState& state,
                           const SharedTables& shared,
                           const std::vector<double>& maker_prior) {
  makers_.clear();
  weight_.clear();
  std::copy(frame.year_weight.begin(), frame.year_weight.end(),
            evidence_.begin() + frame.first);
  for (const JointMark& mark : piece.marks) {
    const auto& curve = shared.variant[static_cast<std::size_t>(mark.lineage)]
                                      [static_cast<std::size_t>(mark.variant)];
    for (int t = frame.first; t <= frame.last; ++t) {
      evidence_[year_at(t)] *= static_cast<float>(curve[year_at(t)]);
    }
  }
  weigh_fashion(frame, state, shared);
  double total = 0;
  const int from = piece.maker < 0 ? 0 : piece.maker;
  const int to = piece.maker < 0 ? layout_.makers : piece.maker;
  for (int m = from; m <= to; ++m) {
    const auto at = static_cast<std::size_t>(m);
    double prior = maker_prior[at];
    if (!piece.maker_weight.empty()) {
      prior *= piece.maker_weight[at];
    }
    MakerCells cells{m, std::max(frame.first, state.start[at]),
                     std::min(frame.last, state.end[at])};
    if (prior <= 0 || cells.last < cells.first) {
      continue;
    }
    weigh_maker(cells, frame, state, shared, prior);
    total += cells.total;
    makers_.push_back(cells);
  }
  return total;
}

}  // namespace backmark::evidence
