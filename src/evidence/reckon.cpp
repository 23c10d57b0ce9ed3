#include "evidence/reckon.h"

#include <algorithm>
#include <cmath>

#include "evidence/in_use.h"
#include "evidence/parallel.h"
#include "evidence/reckon_inside.h"

namespace backmark::evidence {

namespace {

constexpr double stray = 0.05;  // share of a maker's pieces that tell nothing of the span

std::vector<double> even_over(YearSpan stated, YearSpan axis) {
  std::vector<double> p(static_cast<std::size_t>(axis.length()), 0);
  const int from = std::clamp(stated.first - axis.first, 0, axis.length() - 1);
  const int to = std::clamp(stated.last - axis.first, 0, axis.length() - 1);
  for (int cell = from; cell <= to; ++cell) {
    p[static_cast<std::size_t>(cell)] = 1.0 / (to - from + 1);
  }
  return p;
}

// The rise above `floor`, cut where it is nothing.
WorkingYears working_years(const std::vector<double>& factor, double floor) {
  constexpr double nothing = 1e-9;
  WorkingYears work{floor, factor.size(), {}};
  std::size_t end = 0;
  for (std::size_t t = 0; t < factor.size(); ++t) {
    if (factor[t] - floor > nothing) {
      work.first = std::min(work.first, t);
      end = t + 1;
    }
  }
  for (std::size_t t = work.first; t < end; ++t) {
    work.rise.push_back(factor[t] - floor);
  }
  return work;
}

}  // namespace

SpanPrior Reckoning::Inside::prior_of(std::size_t maker) const {
  return span_prior(show->all<model::Maker>()[maker]);
}

void Reckoning::Inside::learn_lag() {
  std::vector<LagExample> examples;
  for (std::size_t i = 0; i < gathered.pieces.size(); ++i) {
    const auto& stated = gathered.style.pieces[i].stated;
    if (!stated) {
      continue;
    }
    for (const SaidOfYear& said : gathered.pieces[i].years) {
      if (said.statement.saying == Saying::acquired) {
        const int made = stated->first.value + stated->length() / 2;
        examples.push_back({made, said.statement.last, settings.today.value});
      }
    }
  }
  lag = learned_lag(examples);
  shapes = {axis, lag, settings.today.value};
  for (const GatheredPiece& piece : gathered.pieces) {
    for (const SaidOfYear& said : piece.years) {
      shapes.keep(said.statement);
    }
  }
}

// Spans from what is documented and from dated pieces with a firm name.
void Reckoning::Inside::learn_spans(const Watch& watch) {
  constexpr std::size_t most_pieces = 40;
  const auto& makers = show->all<model::Maker>();
  std::vector<std::vector<std::vector<double>>> years(makers.size());
  for (const StylePiece& piece : gathered.style.pieces) {
    if (piece.maker && piece.stated) {
      auto& own = years[static_cast<std::size_t>(*piece.maker)];
      if (own.size() < most_pieces) {
        own.push_back(even_over(*piece.stated, axis));
      }
    }
  }
  at_work.resize(makers.size());
  in_shares(makers.size(), watch.threads, [&](std::size_t m) {
    const bool known = makers[m].from || makers[m].to || !years[m].empty();
    if (known && makers[m].kind != model::MakerKind::unrecorded) {
      at_work[m] = working_years(
          span_factor(span_belief(prior_of(m), axis, years[m], stray), stray), stray);
    }
  });
}

// The learned share of listed hands is that of the signed pieces. An unsigned piece is by a
// listed hand less often: in a show where one piece in five names anybody, most hands are
// nobody's we know. So the odds are scaled by those of being named at all, unless the user sets
// the share.
Reckoning::Reckoning(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Reckoning::Reckoning(Reckoning&&) noexcept = default;
Reckoning& Reckoning::operator=(Reckoning&&) noexcept = default;
Reckoning::~Reckoning() = default;

const std::vector<std::string>& Reckoning::notes() const {
  return inside_->notes;
}
YearSpan Reckoning::axis() const {
  return inside_->axis;
}
const Gathered& Reckoning::gathered() const {
  return inside_->gathered;
}
const Style* Reckoning::style() const {
  return inside_->style ? &*inside_->style : nullptr;
}

model::PieceBelief Reckoning::judge(std::size_t piece, const LeftOut& without) const {
  const Asked asked = inside_->asked(piece, without);
  return inside_->to_belief(asked, inside_->judge(asked, false));
}

model::PieceBelief Reckoning::judge_if(std::size_t piece, const WhatIf& change) const {
  const auto& pieces = inside_->show->all<model::Piece>();
  const Asked asked = inside_->asked_if(&pieces[piece], change);
  return inside_->to_belief(asked, inside_->judge(asked, false));
}

model::PieceBelief Reckoning::judge_new(const WhatIf& piece) const {
  const Asked asked = inside_->asked_if(nullptr, piece);
  return inside_->to_belief(asked, inside_->judge(asked, false));
}

std::vector<model::Misfit> Reckoning::doubts(std::size_t piece) const {
  const Asked asked = inside_->asked(piece, {});
  return misfits_of(*inside_->show, asked.id, inside_->judge(asked, false), 0);
}

Result<model::Beliefs> Reckoning::judge_all(const Watch& watch) const {
  const auto& pieces = inside_->show->all<model::Piece>();
  model::Beliefs beliefs;
  beliefs.pieces.resize(pieces.size());
  beliefs.seed = inside_->settings.seed;
  beliefs.notes = inside_->notes;
  beliefs.chains = inside_->sampled.chains;
  beliefs.rhat_max = inside_->sampled.rhat_max;
  beliefs.ess_min = inside_->sampled.ess_min;
  beliefs.converged = inside_->sampled.converged;
  std::vector<std::vector<model::Misfit>> misfits(pieces.size());
  in_shares(pieces.size(), watch.threads, [&](std::size_t i) {
    if (watch.stop.stop_requested()) {
      return;
    }
    const Asked asked = inside_->asked(i, {});
    const Judged judged = inside_->judge(asked, false);
    beliefs.pieces[i] = inside_->to_belief(asked, judged);
    misfits[i] = misfits_of(*inside_->show, asked.id, judged);
  });
  if (watch.stop.stop_requested()) {
    return stopped();
  }
  for (auto& found : misfits) {
    beliefs.misfits.insert(beliefs.misfits.end(), found.begin(), found.end());
  }
  std::stable_sort(beliefs.misfits.begin(), beliefs.misfits.end(),
                   [](const auto& a, const auto& b) { return a.p > b.p; });
  return beliefs;
}

}  // namespace backmark::evidence
