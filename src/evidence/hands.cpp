#include "evidence/hands.h"

#include <algorithm>
#include <cmath>

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

std::vector<char> Hands::listing(std::optional<int> lot) const {
  std::vector<char> on_list;
  for (const int maker : slots_) {
    on_list.push_back(listed(maker, lot) ? 1 : 0);
  }
  return on_list;
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
  smoother_->apply(p);
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
  const std::vector<char> on_the_list = listing(question.lot);
  std::vector<double> by_maker(slots_.size(), -1);  // below 0: no piece speaks for them
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
    if (on_the_list[slot_[i]] != 0) {
      double& own = by_maker[slot_[i]];
      own = std::max(own, 0.0) + weight * agrees;
      named += weight * agrees;
      on_list += tempered;
    } else {
      other += tempered;
    }
  }
  HandJudgement judgement;
  if (std::all_of(by_maker.begin(), by_maker.end(), [](double w) { return w < 0; })) {
    return judgement;
  }
  judgement.listed = on_list / (on_list + other);
  if (settings_.listed_share) {
    judgement.listed = rebased(judgement.listed, learned_share_, *settings_.listed_share);
  }
  for (std::size_t slot = 0; slot < slots_.size(); ++slot) {
    if (by_maker[slot] >= 0) {
      judgement.if_listed.push_back({slots_[slot], by_maker[slot] / std::max(named, 1e-30)});
    }
  }
  std::stable_sort(judgement.if_listed.begin(), judgement.if_listed.end(),
                   [](const HandChance& a, const HandChance& b) { return a.p > b.p; });
  return judgement;
}

}  // namespace backmark::evidence
