#include "evidence/hands.h"

#include <algorithm>
#include <cmath>

#include "evidence/year_grid.h"

namespace backmark::evidence {

namespace {

// The share of someone on the list, moved from one base rate to another.
double rebased(double p, double from, double to) {
  const double safe = std::clamp(p, 1e-9, 1 - 1e-9);
  const double odds = safe / (1 - safe) * (to / (1 - to)) / (from / (1 - from));
  return odds / (1 + odds);
}

}  // namespace

bool Hands::listed(int maker, std::optional<int> lot) const {
  int count = pieces_.at(maker);
  if (lot) {
    const auto own = pieces_in_lot_.find({*lot, maker});
    count -= own == pieces_in_lot_.end() ? 0 : own->second;
  }
  return count >= settings_.listed_from;
}

// sum_t p(t) Y'(t) * length of the axis: 1 if the years agree no better than chance. Smoothing
// p instead of the span gives the same sum.
double Hands::timely(YearSpan stated, const std::vector<double>& cumulative) const {
  const double inside =
      mass_between({axis_, 1}, cumulative, stated) / stated.length() * axis_.length();
  return settings_.date_floor + (1 - settings_.date_floor) * inside;
}

std::vector<double> Hands::smoothed(const std::vector<double>* years) const {
  if (years == nullptr) {
    return {};
  }
  std::vector<double> p = *years;
  Smoother(p.size(), settings_.date_smoothing).apply(p);
  return cumulated(p);
}

HandJudgement Hands::judge(const Question& question) const {
  const std::size_t count = pool_.size();
  std::vector<std::uint8_t> bytes(count * pool_.kinds());
  pool_.row(*question.values, count, bytes.data());
  std::vector<float> scaled;
  for (std::size_t kind = 0; kind < pool_.kinds(); ++kind) {
    scaled.push_back(static_cast<float>(likeness_.d[kind]) * pool_.step(kind));
  }
  std::vector<float> kernel(count);
  kernel_row(bytes.data(), count, scaled, kernel.data());
  const auto years = smoothed(question.years);
  std::map<int, double> by_maker;
  double other = likeness_.open;
  double on_list = 0;
  double named = 0;
  for (std::size_t i = 0; i < count; ++i) {
    if (question.lot && lot_[i] == *question.lot) {
      continue;
    }
    const double weight = static_cast<double>(kernel[i]) * static_cast<double>(evidence_[i]);
    const double agrees = !years.empty() && stated_[i] ? timely(*stated_[i], years) : 1;
    // Whether by anyone listed hangs on the sum over many hands, which the years sharpen too
    // much when taken whole: the root keeps the odds honest (method-style.md, section 6).
    const double tempered = weight * std::sqrt(agrees);
    if (listed(maker_[i], question.lot)) {
      by_maker[maker_[i]] += weight * agrees;
      named += weight * agrees;
      on_list += tempered;
    } else {
      other += tempered;
    }
  }
  HandJudgement judgement;
  if (by_maker.empty()) {
    return judgement;
  }
  judgement.listed = on_list / (on_list + other);
  if (settings_.listed_share) {
    judgement.listed = rebased(judgement.listed, learned_share_, *settings_.listed_share);
  }
  for (const auto& [maker, weight] : by_maker) {
    judgement.if_listed.push_back({maker, weight / std::max(named, 1e-30)});
  }
  std::stable_sort(judgement.if_listed.begin(), judgement.if_listed.end(),
                   [](const HandChance& a, const HandChance& b) { return a.p > b.p; });
  return judgement;
}

}  // namespace backmark::evidence
