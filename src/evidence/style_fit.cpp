#include "evidence/style_fit.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/text.h"
#include "evidence/lots.h"
#include "evidence/span_agreement.h"

namespace backmark::evidence {

namespace {

constexpr int borrowed_below = 60;  // dated lots

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
      (piece.hearsay ? told_ : dated_).push_back(i);
      lot_size_[piece.lot] += 1;
      if (!piece.hearsay) {
        dated_lots_.insert(piece.lot);
      }
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
  style_.compared_ = static_cast<int>(dated_lots_.size()) >= 2;
  take_notes();
  drop_lessons_of_others();
  return Done{};
}

void StyleFit::drop_lessons_of_others() {
  if (known_ == nullptr) {
    return;
  }
  const std::vector<std::string> names(style_.names_.begin(), style_.names_.end() - 2);
  const std::size_t lines = names.size() + (style_.compared_ ? 2 : 1);
  const bool ours = known_->names == names && known_->axis == style_.grid_.span &&
                    known_->small == style_.small_ && known_->d.size() == names.size() &&
                    known_->b.size() == lines && known_->b_alone.size() == names.size() + 1;
  known_ = ours ? known_ : nullptr;
}

void StyleFit::take_notes() {
  const auto lots = static_cast<int>(dated_lots_.size());
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
  if (static_cast<int>(dated_lots_.size()) < fewest_lots) {
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
  std::vector<std::size_t> teaching = dated_;
  teaching.insert(teaching.end(), told_.begin(), told_.end());
  std::sort(teaching.begin(), teaching.end());
  pool_ = drawn_lots(table_, std::move(teaching), settings_.pool_most);
  std::vector<double> weights;
  for (const std::size_t piece : pool_) {
    weights.push_back(evidence(piece));
  }
  style_.comparanda_ =
      Comparanda(table_, DistancePool(table_, pool_), std::move(weights), style_.grid_,
                 style_.grid_.in_cells(span_smoothing_ * stretch_));
  watch_.tell(0.05);
  if (known_ != nullptr) {
    style_.comparanda_.set({known_->d, known_->open});
    return Done{};
  }
  auto likeness = learned(sample_);
  if (!likeness) {
    return likeness.problem();
  }
  style_.comparanda_.set(*std::move(likeness));
  watch_.tell(0.6);
  return Done{};
}

Result<Style> fit_style(const StyleTable& table,
                        const StyleSettings& settings,
                        const Watch& watch,
                        const StyleLessons* known) {
  return StyleFit(table, settings, watch, known).run();
}

}  // namespace backmark::evidence
