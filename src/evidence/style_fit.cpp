#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "base/text.h"
#include "evidence/lots.h"
#include "evidence/parallel.h"
#include "evidence/style.h"

namespace backmark::evidence {

namespace {

constexpr std::size_t shares = 16;
constexpr int fewest_lots = 12;     // below, no weight is fitted
constexpr int borrowed_below = 60;  // dated lots

// How much of piece i's smoothed span falls on the stated span of piece j.
class SpanAgreement : public Agreement {
 public:
  SpanAgreement(const StyleTable& table,
                const std::vector<std::size_t>& members,
                const YearGrid& grid,
                double smoothing_cells,
                const OverallDensity& overall) {
    SpanCurves spans(grid, smoothing_cells);
    std::map<int, std::vector<double>> by_lot;
    for (const std::size_t member : members) {
      const auto& piece = table.pieces[member];
      span_.push_back(static_cast<std::uint32_t>(spans.add(*piece.stated)));
      auto& sums = by_lot[piece.lot];
      if (sums.empty()) {
        sums = cumulated(overall.without(piece.lot));
      }
      open_.push_back(mass_between(grid, sums, *piece.stated));
    }
    count_ = spans.size();
    forth_ = spans.masses();
    back_.resize(forth_.size());
    for (std::size_t u = 0; u < count_; ++u) {
      for (std::size_t v = 0; v < count_; ++v) {
        back_[v * count_ + u] = forth_[u * count_ + v];
      }
    }
  }

  void row(std::size_t j, float* forth, float* back) const override {
    const float* to_j = back_.data() + span_[j] * count_;
    const float* from_j = forth_.data() + span_[j] * count_;
    for (std::size_t i = 0; i < j; ++i) {
      forth[i] = to_j[span_[i]];
      back[i] = from_j[span_[i]];
    }
  }
  double open(std::size_t j) const override { return open_[j]; }

 private:
  std::vector<std::uint32_t> span_;
  std::vector<double> open_;
  std::size_t count_ = 0;
  std::vector<float> forth_, back_;  // [from * count + to], and turned over
};

YearSpan stated_axis(const StyleTable& table) {
  std::optional<YearSpan> axis;
  const auto widen = [&](YearSpan span) {
    axis = axis ? YearSpan{std::min(axis->first, span.first), std::max(axis->last, span.last)}
                : span;
  };
  for (const auto& piece : table.pieces) {
    if (piece.stated) {
      widen(*piece.stated);
    }
  }
  for (const auto& window : table.windows) {
    widen(window.span);
  }
  const int margin = std::max(10, axis->length() / 20);
  return {axis->first - margin, axis->last + margin};
}

}  // namespace

class StyleFit {
 public:
  StyleFit(const StyleTable& table, const StyleSettings& settings, const Watch& watch)
      : table_(table), settings_(settings), watch_(watch) {}

  Result<Style> run() {
    check(table_);
    if (auto ready = prepare(); !ready) {
      return ready.problem();
    }
    for (const auto step : {&StyleFit::compare, &StyleFit::stack_up, &StyleFit::calibrate}) {
      if (auto done = (this->*step)(); !done) {
        return done.problem();
      }
      if (watch_.stop.stop_requested()) {
        return stopped();
      }
    }
    watch_.tell(1);
    return std::move(style_);
  }

 private:
  Result<Done> prepare();
  Result<Done> compare();
  Result<Done> stack_up();
  Result<Done> calibrate();
  std::vector<std::vector<double>> predictions();

  void count_lots();
  void take_notes();
  std::vector<int> ties() const;
  double evidence(std::size_t piece) const;
  double judged(std::size_t piece) const;
  Result<Likeness> learned(const std::vector<std::size_t>& sample);
  void set_curves(double smoothing_years);
  void draft_all();
  StackTask task(bool with_comparanda) const;
  double stack_priors(std::size_t line) const;

  const StyleTable& table_;
  const StyleSettings& settings_;
  const Watch& watch_;
  Style style_;
  double stretch_ = 1;  // of all lengths of time on a long axis
  double span_smoothing_ = 4;
  std::vector<std::size_t> dated_, pool_, sample_;
  std::map<int, double> lot_size_;    // dated pieces
  std::vector<Style::Draft> drafts_;  // of the sample
  StyleTable words_;                  // the pool's pieces with only the words kept
};

double StyleFit::evidence(std::size_t piece) const {
  const auto& one = table_.pieces[piece];
  return one.weight * std::pow(lot_size_.at(one.lot), -settings_.lot_power);
}

double StyleFit::judged(std::size_t piece) const {
  return evidence(piece);
}

Result<Done> StyleFit::prepare() {
  for (std::size_t i = 0; i < table_.pieces.size(); ++i) {
    const auto& piece = table_.pieces[i];
    if (piece.stated && piece.weight > 0) {
      dated_.push_back(i);
      lot_size_[piece.lot] += 1;
    }
  }
  if (dated_.empty() && table_.windows.empty()) {
    return Problem{Fault::bad_input,
                   "no piece can be dated by style: none has a stated date, and no window of "
                   "use is stated",
                   "", "record the years of some pieces, or when some fitting was in use"};
  }
  style_.settings_ = settings_;
  const YearSpan axis = settings_.axis ? *settings_.axis : stated_axis(table_);
  style_.grid_ = YearGrid::over(axis, 500);
  const int bins = std::max(1, static_cast<int>(style_.grid_.cells() + 99) / 100);
  style_.bins_ = {axis, style_.grid_.width * bins};
  stretch_ = std::max(1.0, axis.length() / 500.0);
  style_.small_ = static_cast<int>(dated_.size()) < settings_.small_below;
  span_smoothing_ = style_.small_ ? 8 : 4;
  for (const auto& character : table_.characters) {
    style_.names_.push_back(character.name);
  }
  style_.names_.insert(style_.names_.end(), {"overall", "comparanda"});
  style_.last_ = Smoother(style_.grid_.cells(),
                          style_.grid_.in_cells(settings_.final_smoothing_years * stretch_));
  style_.compared_ = static_cast<int>(lot_size_.size()) >= 2;
  take_notes();
  return Done{};
}

void StyleFit::take_notes() {
  const auto lots = static_cast<int>(lot_size_.size());
  if (lots == 0) {
    style_.notes_.push_back(
        "no piece is dated: years come from the stated windows of use alone");
  } else if (lots < fewest_lots) {
    style_.notes_.push_back(fmt::format(
        "only {} dated lots: all weights are borrowed, none is learned from this show", lots));
  } else if (lots < borrowed_below) {
    style_.notes_.push_back(fmt::format(
        "only {} dated lots: the weights are largely borrowed; look at the overall density too",
        lots));
  }
}

std::vector<int> StyleFit::ties() const {
  std::vector<int> ties;
  std::map<std::string, int> known;
  for (const auto& character : table_.characters) {
    const auto next = static_cast<int>(known.size());
    const std::string name = style_.small_ && !character.tie.empty()
                                 ? "tie " + character.tie
                                 : fmt::format("own {}", ties.size());
    ties.push_back(known.try_emplace(name, next).first->second);
  }
  return ties;
}

Result<Likeness> StyleFit::learned(const std::vector<std::size_t>& sample) {
  const auto kinds = table_.characters.size();
  const Likeness prior{std::vector<double>(kinds, settings_.prior.d), settings_.prior.open};
  if (static_cast<int>(lot_size_.size()) < fewest_lots) {
    return prior;
  }
  const DistancePool pool(table_, sample);
  const PairTable pairs(table_, pool, watch_);
  const SpanAgreement agreement(table_, sample, style_.grid_,
                                style_.grid_.in_cells(span_smoothing_ * stretch_),
                                style_.overall_);
  LikenessTask task{pairs, agreement, {}, {}, {}, ties(), prior, settings_.ridge_d};
  for (const std::size_t piece : sample) {
    task.lot.push_back(table_.pieces[piece].lot);
    task.evidence.push_back(static_cast<float>(evidence(piece)));
    task.judged.push_back(judged(piece));
  }
  return fit_likeness(task, watch_);
}

Result<Done> StyleFit::compare() {
  style_.overall_ = OverallDensity(
      style_.grid_, style_.grid_.in_cells(settings_.overall_smoothing_years * stretch_));
  for (const std::size_t piece : dated_) {
    style_.overall_.add(table_.pieces[piece].lot, *table_.pieces[piece].stated,
                        evidence(piece));
  }
  sample_ = drawn_lots(table_, dated_, settings_.fit_most);
  pool_ = drawn_lots(table_, dated_, settings_.pool_most);
  std::vector<double> weights;
  for (const std::size_t piece : pool_) {
    weights.push_back(evidence(piece));
  }
  style_.comparanda_ =
      Comparanda(table_, DistancePool(table_, pool_), std::move(weights), style_.grid_,
                 style_.grid_.in_cells(span_smoothing_ * stretch_));
  watch_.tell(0.05);
  auto likeness = learned(sample_);
  if (!likeness) {
    return likeness.problem();
  }
  style_.comparanda_.set(*std::move(likeness));
  watch_.tell(0.6);
  return Done{};
}

void StyleFit::set_curves(double smoothing_years) {
  CurveSettings settings;
  settings.smoothing_years = smoothing_years * stretch_;
  settings.pseudo_per_decade = settings_.pseudo_per_decade;
  settings.decade_years = 10 * stretch_;
  std::vector<double> weights;
  for (const std::size_t piece : pool_) {
    weights.push_back(evidence(piece));
  }
  style_.curve_smoothing_ = settings.smoothing_years;
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
  for (const auto& window : table_.windows) {
    if (window.character == line) {
      return dated_.empty() ? 1 : settings_.prior.windowed;
    }
  }
  return settings_.prior.curve;
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
  const bool fitted = static_cast<int>(lot_size_.size()) >= fewest_lots;
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
    auto b = fit_stack(whole, watch_);
    if (!b) {
      return b.problem();
    }
    std::vector<double> slope;
    const double score = stack_score(whole, watch_, *b, slope);
    if (years == choices.front() || score < least) {
      least = score;
      chosen = years;
      style_.stack_ = *std::move(b);
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
  style_.curves_alone_ = *std::move(alone);
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

Result<Style> fit_style(const StyleTable& table,
                        const StyleSettings& settings,
                        const Watch& watch) {
  return StyleFit(table, settings, watch).run();
}

}  // namespace backmark::evidence
