#include "evidence/joint_chain.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>

#include "evidence/joint_fashion.h"

namespace backmark::evidence {

double unlisted_weight(const JointSettings& settings, int makers) {
  return settings.unlisted_weight > 0 ? settings.unlisted_weight : std::max(0.25, makers / 4.0);
}

double draw_beta(double a, double b, Random& random) {
  const double x = random.gamma(a);
  const double y = random.gamma(b);
  return x / (x + y);
}

JointChain::JointChain(const JointShow& show,
                       const JointSettings& settings,
                       const JointState* start,
                       Random random)
    : show_(show),
      settings_(settings),
      layout_(show),
      random_(std::move(random)),
      weigher_(show, settings_, layout_) {
  for (const JointPiece& piece : show.pieces) {
    frames_.push_back(frame_of(piece, show, layout_));
    lone_maker_.push_back(lone_maker(frames_.size() - 1));
  }
  for (const JointMaker& maker : show.makers) {
    span_tables_.emplace_back(maker.span, show.years);
  }
  const auto rows = static_cast<Index>(layout_.rows);
  const auto makers = static_cast<Index>(layout_.makers) + 1;
  const auto years = static_cast<Index>(layout_.years);
  shared_.fashion.resize(rows * years);
  shared_.fashion_log.resize(rows * years);
  shared_.habit.resize(makers * rows);
  tables_.assign(makers * rows, 0);
  sums_.resize(show.pieces.size());
  for (PieceSums& sum : sums_) {
    sum.year.assign(years, 0);
    sum.maker.assign(makers, 0);
    sum.replaced.assign(static_cast<Index>(show.components), 0);
  }
  place_at_start(start);
  for (Index i = 0; i < show.pieces.size(); ++i) {
    sum_out_doubts(i);
  }
  rebuild_counts();
  rebuild_fashion();
  shared_.variant.resize(state_.lineage.size());
  for (Index lineage = 0; lineage < state_.lineage.size(); ++lineage) {
    rebuild_variant(lineage);
  }
  rebuild_all_habits();
}

// Scattered, so that chains that agree later have something to agree from.
void JointChain::place_at_start(const JointState* start) {
  const auto makers = static_cast<Index>(layout_.makers) + 1;
  const auto years = static_cast<Index>(layout_.years);
  if (start != nullptr) {
    state_ = *start;
  } else {
    for (const JointCharacter& character : show_.characters) {
      state_.stick.push_back(draw_sticks_prior(character.values, layout_.years, 0.01,
                                               0.3 * settings_.fashion_first_sd, random_)
                                 .log_odds);
      state_.fashion_step.push_back(random_.below(settings_.fashion_step.size()));
      state_.habit_share.push_back(0.1 + 0.8 * random_.uniform());
      state_.concentration.push_back(random_.below(settings_.concentration.size()));
    }
    state_.replaced_share.assign(static_cast<Index>(show_.components), 0);
    for (Index g = 0; g < settings_.replaced.size(); ++g) {
      const auto [a, b] = settings_.replaced[g];
      state_.replaced_share[g] = a / (a + b);
    }
    state_.maker_share.assign(makers, 1.0 / static_cast<double>(makers));
    state_.open_share = state_.maker_share;
    state_.naming.assign(makers, 0.5);
    state_.naming[0] = 0;
    state_.density.assign(years, 1.0 / static_cast<double>(years));
    place_spans();
    for (const JointLineage& lineage : show_.lineages) {
      LineageState marks{{}, settings_.mark_overlap.back()};
      for (int j = 1; j < lineage.variants; ++j) {
        marks.change.push_back(j * layout_.years / lineage.variants);
      }
      state_.lineage.push_back(marks);
    }
    for (const auto& [a, b] : show_.doubts) {
      state_.doubt_share.push_back(draw_beta(a, b, random_));
    }
  }
  for (Index i = state_.piece.size(); i < show_.pieces.size(); ++i) {
    const JointPiece& piece = show_.pieces[i];
    PieceState placed;
    placed.replaced_year.assign(static_cast<Index>(show_.components), -1);
    placed.own.assign(show_.characters.size(), 0);
    placed.maker = piece.maker >= 0 ? piece.maker : 0;
    placed.year =
        frames_[i].first + static_cast<int>(random_.below(frames_[i].year_weight.size()));
    const auto m = static_cast<Index>(placed.maker);
    placed.year = std::clamp(placed.year, state_.start[m], state_.end[m]);
    state_.piece.push_back(std::move(placed));
  }
}

// Spans start wide enough for every piece known to be the maker's, else as the prior draws
// them.
void JointChain::place_spans() {
  const auto makers = static_cast<Index>(layout_.makers) + 1;
  state_.start.assign(makers, 0);
  state_.end.assign(makers, layout_.years - 1);
  std::vector<int> latest_first(makers, -1);
  std::vector<int> earliest_last(makers, layout_.years);
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    const int maker = show_.pieces[i].maker;
    if (maker > 0) {
      const auto m = static_cast<Index>(maker);
      latest_first[m] = std::max(latest_first[m], frames_[i].first);
      earliest_last[m] = std::min(earliest_last[m], frames_[i].last);
    }
  }
  for (Index m = 1; m < makers; ++m) {
    if (show_.makers[m - 1].known_span) {
      std::tie(state_.start[m], state_.end[m]) = *show_.makers[m - 1].known_span;
      continue;
    }
    // A piece whose window ends early forces the start, one that begins late the end.
    const int start_to = std::min(earliest_last[m], layout_.years - 1);
    const int end_from = std::max(latest_first[m], 0);
    std::vector<double> weight;
    std::vector<std::pair<int, int>> spans;
    for (int s = 0; s <= start_to; ++s) {
      for (int e = std::max(s, end_from);
           e < std::min(layout_.years, s + span_tables_[m - 1].longest()); ++e) {
        spans.emplace_back(s, e);
        weight.push_back(std::exp(span_tables_[m - 1].log_at(s, e)));
      }
    }
    if (spans.empty()) {
      throw BrokenPromise("a maker's pieces lie further apart than any working life");
    }
    std::tie(state_.start[m], state_.end[m]) = spans[random_.weighted(weight)];
  }
}

void JointChain::rebuild_counts() {
  const auto makers = static_cast<Index>(layout_.makers) + 1;
  shared_.own.assign(makers * static_cast<Index>(layout_.rows), 0);
  shared_.own_total.assign(makers * show_.characters.size(), 0);
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    if (show_.pieces[i].teaches) {
      count_piece(i, 1);
    }
  }
}

void JointChain::rebuild_fashion() {
  for (Index c = 0; c < show_.characters.size(); ++c) {
    const int values = show_.characters[c].values;
    const auto p = fashion_of({values, layout_.years, state_.stick[c]});
    float* to = shared_.fashion.data() + layout_.cell(layout_.first_row[c], 0);
    float* to_log = shared_.fashion_log.data() + layout_.cell(layout_.first_row[c], 0);
    for (Index i = 0; i < p.size(); ++i) {
      to[i] = static_cast<float>(values * p[i] + 1e-30);
    }
    for (Index i = 0; i < p.size() && !settings_.flat_habit_base; ++i) {  // nobody else asks
      to_log[i] = std::log(to[i]);
    }
  }
}

void JointChain::rebuild_variant(Index lineage) {
  auto& curves = shared_.variant[lineage];
  curves = variant_curves(state_.lineage[lineage], layout_.years);
  const double stray = settings_.mark_stray / static_cast<double>(curves.size());
  for (auto& curve : curves) {
    for (double& p : curve) {
      p = (1 - settings_.mark_stray) * p + stray;
    }
  }
}

// V times the base of the maker's habit: the fashion of mid-career, or flat.
double JointChain::base_at(int row, int maker) const {
  if (settings_.flat_habit_base) {
    return 1;
  }
  const auto m = static_cast<Index>(maker);
  const int middle = (state_.start[m] + state_.end[m]) / 2;
  return static_cast<double>(shared_.fashion[layout_.cell(row, middle)]);
}

void JointChain::rebuild_habit(int maker, int character) {
  const auto c = static_cast<Index>(character);
  const auto m = static_cast<Index>(maker);
  const int values = show_.characters[c].values;
  const double a = settings_.concentration[state_.concentration[c]];
  const double w = state_.habit_share[c];
  const double total = a + shared_.own_total[m * show_.characters.size() + c];
  for (int v = 0; v < values; ++v) {
    const int row = layout_.first_row[c] + v;
    const Index at = m * static_cast<Index>(layout_.rows) + static_cast<Index>(row);
    const double prior =
        settings_.fault == SamplerFault::own_year_base ? 0 : a * base_at(row, maker);
    shared_.habit[at] = static_cast<float>(w * (values * shared_.own[at] + prior) / total);
  }
}

void JointChain::rebuild_all_habits() {
  for (int m = 1; m <= layout_.makers; ++m) {
    for (Index c = 0; c < show_.characters.size(); ++c) {
      rebuild_habit(m, static_cast<int>(c));
    }
  }
}

std::vector<double> JointChain::teaching_prior(const JointPiece& piece) const {
  if (settings_.equal_makers) {
    return std::vector<double>(state_.maker_share.size(), 1);
  }
  std::vector<double> prior = state_.maker_share;
  if (settings_.signing) {
    for (Index m = 0; m < prior.size(); ++m) {
      prior[m] *= piece.named ? state_.naming[m] : 1 - state_.naming[m];
    }
  }
  return prior;
}

void JointChain::sweep() {
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    if (show_.pieces[i].teaches) {
      redraw_piece(i, teaching_prior(show_.pieces[i]));
    }
  }
  redraw_habits();
  redraw_tables();
  redraw_concentration();
  redraw_spans();
  redraw_doubts();
  redraw_lineages();
  redraw_fashion();
  redraw_shares();
  rebuild_all_habits();
}

void JointChain::judge_others() {
  std::vector<double> counts(state_.open_share.size(), settings_.maker_weight);
  counts[0] = unlisted_weight(settings_, layout_.makers);
  bool any = false;
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    if (show_.pieces[i].teaches) {
      continue;
    }
    judge_piece(i, state_.open_share);
    if (show_.pieces[i].maker < 0) {
      counts[static_cast<Index>(state_.piece[i].maker)] += 1;
      any = true;
    }
  }
  if (!any) {
    return;
  }
  state_.open_share = draw_dirichlet(counts);
  if (settings_.unlisted_share) {
    const double listed = 1 - state_.open_share[0];
    for (Index m = 1; m < state_.open_share.size(); ++m) {
      state_.open_share[m] *= (1 - *settings_.unlisted_share) / listed;
    }
    state_.open_share[0] = *settings_.unlisted_share;
  }
}

}  // namespace backmark::evidence
