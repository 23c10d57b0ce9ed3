// Curves, stack and calibration of a style fit.
#include <algorithm>
#include <cmath>

#include "evidence/parallel.h"
#include "evidence/style_fit.h"

namespace backmark::evidence {

namespace {

constexpr std::size_t shares = 16;

}  // namespace

void StyleFit::set_curves(double smoothing_years) {
  CurveSettings settings;
  settings.smoothing_years = smoothing_years * stretch_;
  settings.pseudo_per_decade = settings_.pseudo_per_decade;
  settings.decade_years = 10 * stretch_;
  settings.window_ends_years *= stretch_;
  if (dated_.empty()) {
    settings.window_strength = 1;
  }
  std::vector<double> weights;
  for (const std::size_t piece : pool_) {
    weights.push_back(evidence(piece));
  }
  style_.curve_smoothing_ = smoothing_years;
  style_.curves_ = EvidenceCurves(words_, pool_, weights, style_.bins_, settings);
}

void StyleFit::draft_all() {
  const bool again = !drafts_.empty();
  drafts_.resize(sample_.size());
  in_shares(shares, watch_.threads, [&](std::size_t share) {
    for (std::size_t j = share; j < sample_.size(); j += shares) {
      const auto& piece = table_.pieces[sample_[j]];
      if (again) {  // only the curves have changed
        drafts_[j].lines = style_.curves_.lines(style_.kept(piece.values), piece.lot);
      } else {
        drafts_[j] = style_.draft({&piece.values, piece.lot});
        drafts_[j].told = {};  // a row a piece would be the square of the show
      }
    }
  });
}

double StyleFit::stack_priors(std::size_t line) const {
  if (line == table_.characters.size()) {
    return settings_.prior.overall;
  }
  if (line > table_.characters.size()) {
    return settings_.prior.comparanda;
  }
  // With no dated piece only windows speak, and nothing can say that they speak too loudly.
  return dated_.empty() ? 1 : settings_.prior.curve;
}

namespace {

// Averages cells into bins and takes logs.
std::vector<double> binned_logs(const YearGrid& grid,
                                const YearGrid& bins,
                                const std::vector<double>& p) {
  std::vector<double> sums(bins.cells(), 0.0);
  const auto each = static_cast<std::size_t>(bins.width / grid.width);
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    sums[cell / each] += p[cell];
  }
  for (double& value : sums) {
    value = std::log(std::max(value, 1e-9));
  }
  return sums;
}

}  // namespace

StackTask StyleFit::task(bool with_comparanda) const {
  StackTask task;
  task.bins = style_.bins_;
  task.ridge = settings_.ridge_b;
  task.scaled = table_.characters.size();
  const std::size_t lines = table_.characters.size() + (with_comparanda ? 2 : 1);
  for (std::size_t line = 0; line < lines; ++line) {
    task.prior.push_back(stack_priors(line));
  }
  const std::size_t bins = style_.bins_.cells();
  for (std::size_t j = 0; j < sample_.size(); ++j) {
    StackTarget target;
    target.stated = *table_.pieces[sample_[j]].stated;
    target.judged = judged(sample_[j]);
    target.lines.assign(lines * bins, 0);
    const auto put = [&](std::size_t line, const std::vector<double>& nats) {
      for (std::size_t bin = 0; bin < nats.size(); ++bin) {
        target.lines[line * bins + bin] = static_cast<float>(nats[bin]);
      }
    };
    for (std::size_t c = 0; c < table_.characters.size(); ++c) {
      put(c, drafts_[j].lines[c]);
    }
    put(table_.characters.size(), binned_logs(style_.grid_, style_.bins_, drafts_[j].overall));
    if (with_comparanda) {
      put(lines - 1, binned_logs(style_.grid_, style_.bins_, drafts_[j].comparanda));
    }
    task.targets.push_back(std::move(target));
  }
  return task;
}

// Fits the stack; in a small show also chooses the smoothing of the curves by the same score.
Result<Done> StyleFit::stack_up() {
  words_.characters = table_.characters;
  words_.windows = table_.windows;
  words_.pieces = table_.pieces;
  for (const std::size_t piece : pool_) {
    words_.pieces[piece].values = style_.kept(table_.pieces[piece].values);
  }
  if (known_ != nullptr) {
    set_curves(known_->curve_years);
    style_.stack_ = known_->b;
    style_.curves_alone_ = known_->b_alone;
    return Done{};
  }
  const bool fitted = static_cast<int>(dated_lots_.size()) >= fewest_lots;
  const std::vector<double> choices =
      style_.small_ ? std::vector<double>{30, 20, 12} : std::vector<double>{12};
  double least = 0;
  double chosen = choices.front();
  for (const double years : choices) {
    set_curves(years);
    if (!fitted) {
      break;
    }
    draft_all();
    const StackTask whole = task(true);
    auto fit = fit_stack(whole, watch_);
    if (!fit) {
      return fit.problem();
    }
    if (years == choices.front() || fit->score < least) {
      least = fit->score;
      chosen = years;
      style_.stack_ = std::move(fit->b);
    }
  }
  if (!fitted) {
    for (std::size_t line = 0; line < table_.characters.size() + (style_.compared_ ? 2 : 1);
         ++line) {
      style_.stack_.push_back(stack_priors(line));
    }
    style_.curves_alone_ = style_.stack_;
    style_.curves_alone_.resize(table_.characters.size() + 1);
    if (style_.compared_) {
      draft_all();
    }
    return Done{};
  }
  set_curves(chosen);
  draft_all();
  watch_.tell(0.85);
  auto alone = fit_stack(task(false), watch_);
  if (!alone) {
    return alone.problem();
  }
  style_.curves_alone_ = std::move(alone->b);
  return Done{};
}

// What is said of each piece of the sample without its own lot: mixed, then limited.
std::vector<std::vector<double>> StyleFit::predictions() {
  std::vector<std::vector<double>> p(sample_.size());
  in_shares(shares, watch_.threads, [&](std::size_t share) {
    for (std::size_t j = share; j < sample_.size(); j += shares) {
      p[j] = style_.mixed(drafts_[j]);
    }
  });
  std::vector<Arrival> arrivals;
  for (std::size_t j = 0; j < sample_.size(); ++j) {
    const auto& piece = table_.pieces[sample_[j]];
    if (piece.latest) {
      arrivals.push_back({&p[j], *piece.stated, *piece.latest, judged(sample_[j])});
    }
  }
  style_.lags_ =
      LagMap(style_.grid_, arrivals, settings_.after_latest, settings_.lag_pseudo_count);
  for (std::size_t j = 0; j < sample_.size(); ++j) {
    if (const auto& latest = table_.pieces[sample_[j]].latest) {
      style_.lags_.apply(p[j], *latest);
    }
  }
  return p;
}

Result<Done> StyleFit::calibrate() {
  if (known_ != nullptr) {
    style_.lags_ = LagMap(style_.grid_, known_->lags);
    style_.ranks_ = RankMap(known_->ranks);
    style_.left_out_ = known_->left_out;
    style_.left_out_score_ = known_->left_out_score;
    return Done{};
  }
  if (drafts_.empty()) {
    style_.lags_ = LagMap(style_.grid_, {}, settings_.after_latest, settings_.lag_pseudo_count);
    return Done{};
  }
  std::vector<Known> known;
  std::vector<double> score;
  for (const auto& p : predictions()) {
    const std::size_t piece = sample_[known.size()];
    known.push_back({cumulated(p), *table_.pieces[piece].stated, judged(piece)});
    score.push_back(
        std::log(mass_between(style_.grid_, known.back().cumulative, known.back().stated)));
  }
  double sum = 0;
  double weight = 0;
  for (std::size_t j = 0; j < known.size(); ++j) {
    sum += known[j].judged * score[j];
    weight += known[j].judged;
  }
  style_.left_out_score_ = sum / weight;
  if (settings_.rank_pseudo_count > 0) {
    style_.ranks_ =
        RankMap(style_.grid_, known, settings_.rank_cells, settings_.rank_pseudo_count);
  }
  const auto each = static_cast<std::size_t>(style_.bins_.width / style_.grid_.width);
  for (Known& one : known) {
    std::vector<double> coarse;
    for (std::size_t bin = 0; bin <= style_.bins_.cells(); ++bin) {
      coarse.push_back(
          style_.ranks_(one.cumulative[std::min(bin * each, one.cumulative.size() - 1)]));
    }
    one.cumulative = std::move(coarse);
  }
  style_.left_out_ = std::move(known);
  return Done{};
}

}  // namespace backmark::evidence
