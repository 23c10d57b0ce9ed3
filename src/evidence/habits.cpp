#include "evidence/habits.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace backmark::evidence {

namespace {

constexpr double same_fashion = 12;  // years, sd of what counts towards a maker's fashion
constexpr double pseudo_pieces = 5;  // of the overall share, in every fashion
constexpr std::array<double, 8> shares{0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7};
constexpr std::array<double, 4> concentrations{0.5, 1, 2, 4};

double middle(YearSpan span) {
  return 0.5 * (span.first.value + span.last.value);
}

bool shows(const StyleValue& value, int term) {
  return std::binary_search(value.terms.begin(), value.terms.end(), term);
}

}  // namespace

Habits::Habits(const StyleTable& table, std::vector<std::size_t> columns)
    : columns_(std::move(columns)) {
  if (columns_.empty()) {
    return;
  }
  count(table);
  std::map<std::size_t, std::pair<double, double>> years;  // maker: sum and number
  for (const StylePiece& piece : table.pieces) {
    if (piece.maker && piece.stated) {
      auto& [sum, number] = years[static_cast<std::size_t>(*piece.maker)];
      sum += middle(*piece.stated);
      number += 1;
    }
  }
  const std::vector<Counts> overall = overall_shares(table);
  for (const auto& [maker, sum] : years) {
    learn_fashion(table, overall, sum.first / sum.second, makers_[maker]);
  }
  learn_share(table);
}

void Habits::count(const StyleTable& table) {
  for (std::size_t i = 0; i < table.pieces.size(); ++i) {
    const StylePiece& piece = table.pieces[i];
    if (!piece.maker) {
      continue;
    }
    makers_.resize(std::max(makers_.size(), static_cast<std::size_t>(*piece.maker) + 1));
    Maker& maker = makers_[static_cast<std::size_t>(*piece.maker)];
    maker.by_lot[piece.lot].push_back(i);
    maker.seen.resize(columns_.size());
    auto& kept = named_[i];
    for (std::size_t place = 0; place < columns_.size(); ++place) {
      const StyleValue& value = piece.values[columns_[place]];
      Seen& seen = maker.seen[place];
      seen.shown.resize(table.characters[columns_[place]].vocabulary.size());
      seen.recorded += value.terms.empty() ? 0 : 1;
      for (const int term : value.terms) {
        seen.shown[static_cast<std::size_t>(term)] += 1;
      }
      kept.push_back(value);
    }
  }
}

std::vector<Habits::Counts> Habits::overall_shares(const StyleTable& table) const {
  std::vector<Counts> overall;
  for (const std::size_t column : columns_) {
    Counts shares(table.characters[column].vocabulary.size(), 0.0);
    double all = 0;
    for (const StylePiece& piece : table.pieces) {
      if (!piece.stated || piece.values[column].terms.empty()) {
        continue;
      }
      all += piece.weight;
      for (const int term : piece.values[column].terms) {
        shares[static_cast<std::size_t>(term)] += piece.weight;
      }
    }
    for (double& share : shares) {
      share = (share + 0.5) / (all + 1);
    }
    overall.push_back(std::move(shares));
  }
  return overall;
}

void Habits::learn_fashion(const StyleTable& table,
                           const std::vector<Counts>& overall,
                           double year,
                           Maker& maker) const {
  for (std::size_t place = 0; place < columns_.size(); ++place) {
    Counts here(overall[place].size(), 0.0);
    double near = 0;
    for (const StylePiece& piece : table.pieces) {
      const auto& terms = piece.values[columns_[place]].terms;
      if (!piece.stated || terms.empty()) {
        continue;
      }
      const double z = (middle(*piece.stated) - year) / same_fashion;
      const double weight = piece.weight * std::exp(-0.5 * z * z);
      near += weight;
      for (const int term : terms) {
        here[static_cast<std::size_t>(term)] += weight;
      }
    }
    for (std::size_t term = 0; term < here.size(); ++term) {
      here[term] = (here[term] + pseudo_pieces * overall[place][term]) / (near + pseudo_pieces);
    }
    maker.usual.push_back(std::move(here));
  }
}

std::vector<Habits::Met> Habits::met_of(const Maker& maker,
                                        std::size_t place,
                                        const StyleValue& value,
                                        std::optional<int> lot) const {
  const auto own = lot ? maker.by_lot.find(*lot) : maker.by_lot.end();
  std::vector<Met> met;
  for (const int term : value.terms) {
    const auto at = static_cast<std::size_t>(term);
    const Seen& seen = maker.seen[place];
    if (at >= seen.shown.size()) {
      continue;
    }
    Met one{seen.shown[at], seen.recorded};
    if (own != maker.by_lot.end()) {
      for (const std::size_t piece : own->second) {
        const StyleValue& held = named_.at(piece)[place];
        one.recorded -= held.terms.empty() ? 0 : 1;
        one.shown -= shows(held, term) ? 1 : 0;
      }
    }
    one.shown /= maker.usual[place][at];
    met.push_back(one);
  }
  return met;
}

// Several terms of one character: the mean.
double Habits::lift_of(const std::vector<Met>& met, double share, double concentration) {
  double sum = 0;
  for (const Met& one : met) {
    sum += 1 - share + share * (one.shown + concentration) / (one.recorded + concentration);
  }
  return met.empty() ? 1 : sum / static_cast<double>(met.size());
}

double Habits::lift(int maker,
                    const std::vector<StyleValue>& values,
                    const std::vector<std::size_t>& columns,
                    std::optional<int> lot) const {
  const auto m = static_cast<std::size_t>(maker);
  if (share_ <= 0 || m >= makers_.size() || makers_[m].usual.empty()) {
    return 1;
  }
  double lift = 1;
  for (const std::size_t column : columns) {
    const auto place = static_cast<std::size_t>(
        std::find(columns_.begin(), columns_.end(), column) - columns_.begin());
    if (place < columns_.size()) {
      lift *= lift_of(met_of(makers_[m], place, values[column], lot), share_, concentration_);
    }
  }
  return lift;
}

void Habits::learn_share(const StyleTable& table) {
  std::vector<std::vector<Met>> all;
  for (const auto& [piece, values] : named_) {
    const StylePiece& named = table.pieces[piece];
    const Maker& maker = makers_[static_cast<std::size_t>(*named.maker)];
    for (std::size_t place = 0; place < columns_.size() && !maker.usual.empty(); ++place) {
      all.push_back(met_of(maker, place, values[place], named.lot));
    }
  }
  double best = 0;
  for (const double concentration : concentrations) {
    for (const double share : shares) {
      double score = 0;
      for (const auto& met : all) {
        score += std::log(lift_of(met, share, concentration));
      }
      if (score > best) {
        best = score;
        share_ = share;
        concentration_ = concentration;
      }
    }
  }
}

}  // namespace backmark::evidence
